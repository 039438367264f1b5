/** Names that a program might take for something else than a name. */
export const hostileNames: readonly string[] = [
  '<script>globalThis.taken = 1</script>',
  '<img src=x onerror="globalThis.taken = 2">',
  '"><svg onload=globalThis.taken=3>',
  "';globalThis.taken=4;//",
  '[words](javascript:globalThis.taken=5) **strong**',
  '\u0024{globalThis.taken=6} {{7*7}}',
  '__proto__',
  'constructor',
  'toString',
  '=HYPERLINK("x","y")',
  '+1-1',
  '@SUM(1)',
  "'quoted'",
  'a,b;c"d"\te',
  'two\nlines',
  'אבג ‮txet desrever',
  '🐴👩‍🌾 naïve Ünïcode',
  'NaN',
  '007',
  'n'.repeat(10_000),
];

/** A herd of horses of these names, in tidy CSV: four feet each, before and after two visits. */
export function hostileFeet(names: readonly string[] = hostileNames): string {
  const rows = names.flatMap((name, horse) =>
    ['2026-01-13', '2026-03-09'].flatMap((date, visit) =>
      ['before', 'after'].flatMap((moment, when) =>
        ['LF', 'RF', 'LH', 'RH'].map((limb, foot) => {
          const angle = 48 + ((horse * 7 + visit * 3 + foot * 5 + when) % 9);
          const cell = `"${name.replaceAll('"', '""')}"`;
          return [
            cell,
            date,
            limb,
            moment,
            angle,
            angle - 3 - (horse % 5),
            angle + 1,
            80 + (foot % 3) + visit,
            33 + foot,
            52,
            55 + (horse % 4),
            cell,
          ].join();
        }),
      ),
    ),
  );
  const headings =
    'horse_id,date,limb,moment,toe_angle_deg,heel_angle_deg,pastern_angle_deg,toe_length_mm,heel_length_mm,medial_wall_mm,lateral_wall_mm,observer';
  return `${headings}\n${rows.join('\n')}\n`;
}
