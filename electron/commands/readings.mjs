import { runWithTsx } from './run-with-tsx.mjs';

runWithTsx('readings.ts');
