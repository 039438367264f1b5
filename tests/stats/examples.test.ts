import * as stats from '../../lib/stats/index.ts';
import { readData } from '../reference/stats/read.ts';
import { runExamples } from './runExamples.ts';

const { numbers, text } = readData('sleepstudy');
const sleepstudy = {
  Reaction: Float64Array.from(numbers.Reaction),
  Days: Float64Array.from(numbers.Days),
  Subject: text.Subject,
};

runExamples('lib/stats', { ...stats, sleepstudy });
