import type { TooLittle } from '../hoof/intervalModel.ts';
import type { IntervalSumsFit } from '../hoof/intervalSums.ts';
import { termWordsTable } from '../hoof/intervalTables.ts';
import {
  betweenSentence,
  effectSentence,
  errorSentence,
  modelSentence,
  singularSentence,
} from '../hoof/intervalWords.ts';
import type { Block } from '../page/blocks.ts';
import type { Page } from '../page/page.ts';
import type { DisplayUnits } from '../sheet/display.ts';
import { Sheet } from '../sheet/sheet.ts';
import { say } from '../words/say.ts';

/** The page *Longer intervals* of a registry: the same answer in the same words, from sums of its intervals. */
export const largeIntervalsPage: Page<IntervalSumsFit | TooLittle> = {
  name: 'longer-intervals',
  title: say`Does a longer interval cost balance?`,
  question: say`Within one horse, does a foot drift further when the next visit comes later, and how sure is that?`,
  blocks: ({ herd: answer, units }) =>
    answer.kind === 'too little'
      ? [
          {
            kind: 'finding',
            id: 'answer',
            subject: say`Too little to go by yet`,
            sentence: `${answer.reason}.`,
            state: 'unsure',
          },
        ]
      : answerBlocks(answer, units),
};

function answerBlocks(answer: IntervalSumsFit, units: DisplayUnits): Block[] {
  const { lower, upper } = answer.within;
  const { unmeasured, otherMoments, therapeutic } = answer.leftOut;
  const told = lower > 0 || upper < 0;
  const singular = singularSentence(answer);
  return [
    {
      kind: 'figures',
      items: [
        { label: say`horses`, value: String(answer.horses) },
        { label: say`feet`, value: String(answer.feet) },
        { label: say`intervals`, value: String(answer.n) },
        { label: say`not measured at both ends`, value: String(unmeasured) },
        { label: say`compared at other moments`, value: String(otherMoments) },
        { label: say`set so on purpose`, value: String(therapeutic) },
      ],
    },
    {
      kind: 'finding',
      id: 'answer',
      subject: told ? say`In these records it goes along` : say`These records can’t tell`,
      sentence: `${effectSentence(answer, answer, units)}.`,
      state: told ? 'raise' : 'unsure',
      against: [
        say`Each horse is compared with itself: the length of an interval against that horse’s own usual one.`,
        say`A 95% interval made this way holds the true effect in about 95 of 100 herds, if the model is right.`,
      ],
    },
    { kind: 'prose', text: betweenSentence(answer, answer, units) },
    { kind: 'heading', level: 2, text: say`Is that more than the error of measuring?`, id: 'error' },
    { kind: 'prose', text: errorSentence(answer, answer, units) },
    { kind: 'heading', level: 2, text: say`The model`, id: 'model' },
    { kind: 'prose', text: modelSentence(answer, answer) },
    ...(singular === '' ? [] : [{ kind: 'prose' as const, text: singular }]),
    {
      kind: 'sheet',
      name: 'terms',
      title: say`The model’s table`,
      sheet: Sheet.from(termWordsTable(answer, answer, units)),
    },
    { kind: 'heading', level: 2, text: say`What it doesn’t show`, id: 'limits' },
    {
      kind: 'prose',
      tone: 'caution',
      text: say`These are records, not a trial: nobody drew lots for who was seen when. So they show what went together, not what would happen if the interval were changed, nothing about a horse that is not here, and nothing about how a foot should be trimmed.`,
    },
  ];
}
