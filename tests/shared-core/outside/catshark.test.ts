import { describe, expect, it } from 'vitest';
import { strouhalNumber } from '#core/measures/products/propulsion';
import { readTable } from './read-table';

/** Published midline kinematics of swimming catsharks (Berio, Morerod, Di Santo): 51 rows. */
describe('published undulation of catsharks', () => {
  it('gives its wave speed and Strouhal number by our own functions, to the last digit', () => {
    const rows = readTable('catshark-midlines');
    expect(rows).toHaveLength(51);
    for (const row of rows) {
      const cell = (name: string): number => Number(row[name]);
      const speed = cell('speed_m_per_s');
      const amplitude = cell('tail_amplitude_lengths') * (cell('total_length_cm') / 100);
      const strouhal = strouhalNumber(cell('tail_beat_hz'), amplitude, speed);
      expect(Math.abs(strouhal / cell('strouhal') - 1)).toBeLessThan(1e-12);
      // body-wave speed = wavelength · frequency, here from slope and angular frequency as the core has them
      const slope = (2 * Math.PI) / cell('wavelength_lengths');
      const waveSpeed = (2 * Math.PI * cell('tail_beat_hz')) / slope;
      expect(Math.abs(waveSpeed / cell('wave_speed_lengths_per_s') - 1)).toBeLessThan(1e-12);
    }
  });
});
