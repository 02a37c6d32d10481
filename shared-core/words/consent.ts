import { words } from './words';

/** Why a picture may or may not be shown. */
export const consentWords = words({
  swimmer: 'this swimmer',
  and: '{names} and {names2}',
});
