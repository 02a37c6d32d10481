import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { strouhalNumber } from '#core/measures/products/propulsion';
import { outsideFolder, readTable } from './outside-folder';

const folder = outsideFolder('catshark');

/** Published midline kinematics of swimming catsharks (Berio, Morerod, Di Santo): 51 rows. */
describe.skipIf(folder === null)('published undulation of catsharks', () => {
  it('gives its wave speed and Strouhal number by our own functions, to the last digit', () => {
    const { names, rows } = readTable(readFileSync(`${folder}/scanicula_midline_kinematics.txt`, 'utf8'));
    expect(rows).toHaveLength(51);
    for (const row of rows) {
      const cell = (name: string): number => Number(row[names.indexOf(name)]);
      const speed = cell('U');
      const amplitude = cell('tailAmplitude') * (cell('TL') / 100);
      const strouhal = strouhalNumber(cell('TBF'), amplitude, speed);
      expect(Math.abs(strouhal / cell('St') - 1)).toBeLessThan(1e-12);
      // body-wave speed = wavelength · frequency, here from slope and angular frequency as the core has them
      const slope = (2 * Math.PI) / cell('wavelength');
      const waveSpeed = (2 * Math.PI * cell('TBF')) / slope;
      expect(Math.abs(waveSpeed / cell('wavespeed') - 1)).toBeLessThan(1e-12);
    }
  });
});
