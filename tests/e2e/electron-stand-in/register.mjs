// Loaded before the shell's own bundle: what it imports as "electron" is the stand-in beside this file.
import { register } from 'node:module';

const standIn = new URL('./electron.ts', import.meta.url).href;
const hook = `export async function resolve(name, context, next) {
  return next(name === 'electron' ? ${JSON.stringify(standIn)} : name, context);
}`;
register(`data:text/javascript,${encodeURIComponent(hook)}`);
