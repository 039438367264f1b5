import type { TooLittle } from '../hoof/intervalModel.ts';
import type { IntervalSumsFit } from '../hoof/intervalSums.ts';
import { termWordsTable } from '../hoof/intervalTables.ts';
import { answerWords, betweenSentence, errorSentence, modelSentence, singularSentence } from '../hoof/intervalWords.ts';
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
  const { unmeasured, otherMoments, therapeutic } = answer.leftOut;
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
    { kind: 'finding', id: 'answer', ...answerWords(answer, answer, units) },
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
