import * as geometry from '../../lib/geometry/index.ts';
import { runExamples } from '../stats/runExamples.ts';

runExamples('lib/geometry', geometry);
