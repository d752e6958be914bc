import { expect, it } from 'vitest';
import { isUnknown } from '../known.js';
import { biasTolerance, supplyTolerance, terminatorTolerance } from '../physics/tolerance.js';
import type { WaveCorner } from '../physics/wave/bus-circuit.js';
import { busWaves } from '../physics/wave/bus-waves.js';
import { usualPortCapacitance } from '../physics/wave/corners.js';
import { impedanceTolerance } from '../physics/wave/medium.js';
import { ohms, volts } from '../quantity.js';
import { chanceOf } from '../testing/chance.js';
import { anyBus, waves } from '../testing/waves.js';
import { landingFigures } from './wave-figures.js';
import { waveSettingOf } from './wave-setting.js';

/**
 * What was found beyond, at most, of the swing: corners are few, and something in between may be worse. Where a margin is
 * stated as lost already, how much is lost is less sure; a level is, where a short holds the pair.
 */
const allowed = { safe: 0.01, lost: 0.15, level: 0.025 };

/** The stated worst, against values drawn at random from all tolerances and simulated one by one. */
it('nothing within the tolerances is worse than the stated worst', () => {
  const beyond = { safe: 0, lost: 0, level: 0 };
  let compared = 0;
  for (let seed = 1; seed <= 100; seed++) {
    const chance = chanceOf(seed * 7919);
    const between = (low: number, high: number) => low + chance() * (high - low);
    const around = (tolerance: number) => between(1 - tolerance, 1 + tolerance);
    const built = anyBus(seed);
    const driver = Math.floor(chance() * built.bus.landings.length);
    const setting = waveSettingOf(built.study, { driver });
    if (isUnknown(setting)) continue;
    const { waveBus, signalling, edge, receiver } = setting;
    const stated = waves(built, { driver, pattern: '0', samples: 4 });
    const { least, usual, most } = signalling.drivers;
    for (let draw = 0; draw < 6; draw++) {
      const corner: WaveCorner = {
        wires: (['low', 'nominal', 'high'] as const)[Math.floor(chance() * 3)]!,
        impedance: around(impedanceTolerance),
        terminator: around(terminatorTolerance),
        load: between(signalling.driven === 'both bits' ? 0 : 0.2, 1),
        bias: { resistance: around(biasTolerance), supply: around(supplyTolerance) },
        portCapacitance: chance() * usualPortCapacitance,
      };
      const [one, other] = chance() < 0.5 ? [least, usual] : [usual, most];
      const share = chance();
      const drawn = {
        open: volts(one.open + share * (other.open - one.open)),
        output: ohms(one.output + share * (other.output - one.output)),
      };
      const simulated = busWaves(waveBus, corner, drawn, signalling.driven, between(edge.time, edge.slowest));
      for (const { landing, cutOff, level, margin } of stated.landings) {
        if (cutOff) continue;
        const figures = landingFigures(simulated, [], landing, receiver);
        const swing = 2 * Math.max(Math.abs(level.high), Math.abs(level.low));
        compared++;
        const below = (stated: number, found: number) => (stated - found) / swing;
        const which = 0 <= margin.low ? 'safe' : 'lost';
        beyond[which] = Math.max(beyond[which], below(margin.low, figures.margin.nominal));
        beyond.level = Math.max(beyond.level, below(level.low, figures.level.nominal));
      }
    }
  }
  expect(compared).toBeGreaterThan(1000);
  for (const which of ['safe', 'lost', 'level'] as const) expect(beyond[which], which).toBeLessThan(allowed[which]);
}, 60_000);
