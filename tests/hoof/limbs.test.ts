import { describe, expect, test } from 'vitest';
import { endOf, isLimb, limbName, limbs, oppositeOf, parseLimb, sideOf } from '../../lib/hoof/limbs.ts';

describe('parseLimb', () => {
  test.each([
    ['LF', 'LF|lf|L.F.|l f|L/F|L-F| LF '],
    [
      'LF',
      'left fore|Left Front|left forefoot|LEFT-FORE|leftfore|fore left|Front Left|FL|front, left|VL|V/L|vorne links|linker Vorderhuf',
    ],
    ['LF', 'near fore|Near-fore|nearfore|nearside fore|near side front|nf|N/F|NF|near fore foot'],
    [
      'RF',
      'RF|right fore|off fore|offside front|of|O/F|FR|front right|right front hoof|VR|vorn rechts|rechter Vorderhuf',
    ],
    [
      'LH',
      'LH|left hind|near hind|nh|left rear|LR|back left|rear left|HL|hind left leg|RL|BL|hinten links|Hinterbein links',
    ],
    ['RH', 'RH|right hind|off hind|oh|right rear|RR|right back|HR|Off Hind Foot|hind, off|BR|H.R.|rechts hinten'],
  ])('%s is meant by %s', (limb, written) => {
    for (const text of written.split('|')) expect(parseLimb(text), text).toBe(limb);
  });

  test('words that name no foot, one half of a name, or too much are not guessed at', () => {
    for (const text of [
      '',
      'L',
      'left',
      'fore',
      'hind',
      'both fore',
      'left left',
      'fore hind',
      'LF RF',
      'all',
      '12',
      'x',
      'left fore hind',
      'lb',
      'vh',
    ]) {
      expect(parseLimb(text), text).toBeUndefined();
    }
  });

  test('hostile words are just words', () => {
    for (const text of ['__proto__', 'constructor', 'toString fore', '<script>', 'l__proto__'])
      expect(parseLimb(text), text).toBeUndefined();
  });

  test('every code and every name reads back to its limb', () => {
    for (const limb of limbs) {
      expect(parseLimb(limb)).toBe(limb);
      expect(parseLimb(limbName(limb))).toBe(limb);
    }
  });
});

describe('sides and ends', () => {
  test('the opposite foot has the same end and the other side', () => {
    expect(limbs.map(oppositeOf)).toEqual(['RF', 'LF', 'RH', 'LH']);
    for (const limb of limbs) {
      expect(oppositeOf(oppositeOf(limb))).toBe(limb);
      expect(endOf(oppositeOf(limb))).toBe(endOf(limb));
      expect(sideOf(oppositeOf(limb))).not.toBe(sideOf(limb));
    }
  });

  test('each limb has its side and its end', () => {
    expect(limbs.map(sideOf)).toEqual(['left', 'right', 'left', 'right']);
    expect(limbs.map(endOf)).toEqual(['front', 'front', 'hind', 'hind']);
  });

  test('isLimb knows the four codes and nothing inherited', () => {
    expect(limbs.every(isLimb)).toBe(true);
    expect(['lf', 'LR', '', 'toString', '__proto__'].some(isLimb)).toBe(false);
  });
});
