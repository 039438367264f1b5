import { describe, expect, it } from 'vitest';
import { measured } from '../../lib/hoof/measured.ts';
import { measureDrawing } from '../../lib/views/measureDrawing.ts';
import { box, drawn, extent, numbers, slope } from './shapes.ts';

const pictureOf = (...names: string[]): Element => drawn(measureDrawing(names)!);

describe('measureDrawing', () => {
  for (const { name, title, landmarks } of measured)
    it(`shows where ${name} is measured, inside its frame, and says it`, () => {
      const picture = pictureOf(name);
      expect(picture.querySelector('title')?.textContent).toBe(`Where it is measured: ${title.toLowerCase()}`);
      expect(picture.querySelector('desc')?.textContent).toBe(landmarks);
      const place = picture.querySelector(`.place.${name}`);
      expect(place?.querySelectorAll('.dimension').length).toBeGreaterThan(0);
      const [width, height] = numbers(picture, 'width', 'height');
      for (const path of picture.querySelectorAll('path')) {
        const { left, right, top, bottom } = box(path);
        expect(Math.min(left, top)).toBeGreaterThanOrEqual(0);
        expect(right).toBeLessThanOrEqual(width);
        expect(bottom).toBeLessThanOrEqual(height);
      }
    });

  it('marks angles with an arc and lengths without', () => {
    for (const { name } of measured)
      expect(pictureOf(name).querySelector('.arc') !== null, name).toBe(name.endsWith('_deg'));
  });

  it('draws the measured widths to the scale of the foot beneath them', () => {
    const wall = box(pictureOf('foot_width_mm').querySelector('.wall'));
    expect(extent(pictureOf('foot_width_mm').querySelector('.dimension'))).toBeCloseTo(wall.right - wall.left, 1);
    expect(extent(pictureOf('foot_length_mm').querySelector('.dimension'))).toBeCloseTo(wall.bottom - wall.top, 1);
    const frog = box(pictureOf('frog_width_mm').querySelector('.frog'));
    expect(extent(pictureOf('frog_width_mm').querySelector('.dimension'))).toBeCloseTo(frog.right - frog.left, 1);
    expect(extent(pictureOf('frog_length_mm').querySelector('.dimension'))).toBeCloseTo(frog.bottom - frog.top, 1);
  });

  it('measures heights upright and lengths along the wall', () => {
    expect(slope(pictureOf('medial_wall_mm').querySelector('.dimension'))).toBe(90);
    expect(slope(pictureOf('lateral_heel_mm').querySelector('.dimension'))).toBe(90);
    expect(slope(pictureOf('toe_length_mm').querySelector('.dimension'))).toBeCloseTo(51, 1);
  });

  it('shows several columns on one drawing where they are seen from one side', () => {
    const picture = pictureOf('toe_angle_deg', 'pastern_angle_deg', 'foot_width_mm');
    expect(picture.querySelector('.place.toe_angle_deg')).not.toBeNull();
    expect(picture.querySelector('.place.pastern_angle_deg')).not.toBeNull();
    expect(picture.querySelector('.place.foot_width_mm')).toBeNull();
  });

  it('has no drawing for what is not measured', () => {
    for (const name of ['observer', 'constructor', '__proto__', '']) expect(measureDrawing(name)).toBeUndefined();
    expect(measureDrawing([])).toBeUndefined();
  });
});
