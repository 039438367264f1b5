import type { HerdPage } from '../lib/index.ts';
import { page as betweenVisits } from './betweenVisits.ts';
import { page as cautions } from './cautions.ts';
import { page as columns } from './columns.ts';
import { page as firstSheet } from './firstSheet.ts';
import { page as forTheVisit } from './forTheVisit.ts';
import { page as frontAndHind } from './frontAndHind.ts';
import { page as guide } from './guide.ts';
import { page as herd } from './herd.ts';
import { page as level } from './level.ts';
import { page as longerIntervals } from './longerIntervals.ts';
import { page as measureFromPicture } from './measureFromPicture.ts';
import { page as measurements } from './measurements.ts';
import { page as oneHorse } from './oneHorse.ts';
import { page as ownPage } from './ownPage.ts';
import { page as planATrial } from './planATrial.ts';
import { page as record } from './record.ts';
import { page as tutorial } from './tutorial.ts';
import { page as whenNext } from './whenNext.ts';

/** Every page, in the order of the navigation; the first is where the notebook opens. */
export const pages: readonly HerdPage[] = [
  herd,
  record,
  measureFromPicture,
  oneHorse,
  forTheVisit,
  whenNext,
  frontAndHind,
  level,
  betweenVisits,
  longerIntervals,
  measurements,
  planATrial,
  ownPage,
  columns,
  firstSheet,
  guide,
  tutorial,
  cautions,
];
