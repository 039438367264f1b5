import { halfTurn } from '../../lib/geometry/degrees.ts';
import * as geometry from '../../lib/geometry/index.ts';
import { nearestOnEllipse } from '../../lib/geometry/nearestOnEllipse.ts';
import { centreOf, presentPoints } from '../../lib/geometry/points.ts';
import { runExamples } from '../stats/runExamples.ts';

runExamples('lib/geometry', { ...geometry, centreOf, halfTurn, nearestOnEllipse, presentPoints });
