import { describe, expect, it } from 'vitest';
import { matchHeading, schemaOfHeadings } from '../../lib/files/headings.ts';
import { schemas } from '../../lib/files/schemas.ts';

const feet = (heading: string) => {
  const match = matchHeading(heading, schemas.feet);
  return match && [match.column.name, match.unit, match.wrongUnit].filter((part) => part !== undefined).join(' ');
};

describe('matchHeading', () => {
  it.each([
    ['toe_angle_deg', 'toe_angle_deg'],
    ['Toe angle', 'toe_angle_deg'],
    ['toe angle (deg)', 'toe_angle_deg deg'],
    ['Toe Angle [°]', 'toe_angle_deg deg'],
    ['TOE-ANGLE', 'toe_angle_deg'],
    ['ToeAngle', 'toe_angle_deg'],
    ['toe ang.', 'toe_angle_deg'],
    ['Hoof angle, degrees', 'toe_angle_deg deg'],
    ['Toe length in cm', 'toe_length_mm cm'],
    ['toe_length_in', 'toe_length_mm [in_i]'],
    ['Toe length (")', 'toe_length_mm [in_i]'],
    ['inside heel ht mm', 'medial_heel_mm mm'],
    ['Horse', 'horse_id'],
    ['Which foot', 'limb'],
    ['Visit date', 'date'],
    ['before/after', 'moment'],
    ['Shod?', 'shod'],
  ])('understands %s', (heading, meaning) => {
    expect(feet(heading)).toBe(meaning);
  });

  it('understands the name and the title of every column, and every other word for it', () => {
    for (const schema of Object.values(schemas))
      for (const { name, title, headings } of schema.columns)
        for (const heading of [name, title, title.toUpperCase(), ...headings])
          expect([schema.name, heading, matchHeading(heading, schema)?.column.name]).toEqual([
            schema.name,
            heading,
            name,
          ]);
  });

  it('says where the unit is of another kind', () => {
    expect(feet('toe angle (mm)')).toBe('toe_angle_deg mm');
    expect(matchHeading('toe angle (mm)', schemas.feet)?.unit).toBeUndefined();
  });

  it('leaves alone what it does not know', () => {
    for (const heading of ['', 'heel ht', 'toe angle 2', 'notes', '__proto__', 'constructor', '°'])
      expect(feet(heading)).toBeUndefined();
  });
});

describe('schemaOfHeadings', () => {
  it.each([
    [['horse', 'date', 'foot', 'toe angle'], 'feet'],
    [['toe angle', 'heel angle', 'limb'], 'feet'],
    [['horse_id', 'date', 'farrier', 'work', 'therapeutic'], 'visits'],
    [['Horse', 'Visit date', 'Trimmer'], 'visits'],
    [['horse_id', 'build'], 'horses'],
    [['Name', 'Weight (kg)', 'Heart girth'], 'horses'],
    [['a', 'b', 'c'], undefined],
    [['name', 'type'], undefined],
    [['horse_id', 'limb', 'days', 'toe_growth_mm_per_day'], undefined],
    [[], undefined],
  ])('takes %j for %s', (headings, name) => {
    expect(schemaOfHeadings(headings)?.name).toBe(name);
  });
});
