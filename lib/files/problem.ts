export type { Problem } from '../hoof/problem.ts';
