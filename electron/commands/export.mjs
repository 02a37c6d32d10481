import { runWithTsx } from './run-with-tsx.mjs';

runWithTsx('export.ts');
