/** The circuit simulator ngspice (npm package `eecircuit-engine`), as tests use it. */
import { Simulation } from 'eecircuit-engine';
import { expect } from 'vitest';

/** Runs netlists one after the other and gives the points of each quantity by its name in small letters. */
export class Spice {
  private readonly simulation = new Simulation();

  start(): Promise<void> {
    return this.simulation.start();
  }

  /** Points of what is saved; it fails the test where the simulator did. */
  async points(lines: readonly string[]): Promise<ReadonlyMap<string, readonly number[]>> {
    this.simulation.setNetList(['* circuit', ...lines, '.end'].join('\n'));
    const { data } = await this.simulation.runSim();
    // A run that failed does not throw: it has no data, and the reason among the errors.
    expect(data.length, this.simulation.getError().join('\n')).toBeGreaterThan(0);
    return new Map(data.map(({ name, values }) => [name.toLowerCase(), values.map(Number)]));
  }

  /** Instants and volts of the nodes n0, n1 … from 0 to `stop` seconds in steps of at most `step`. */
  async transient(
    lines: readonly string[],
    { nodes, step, stop }: { readonly nodes: number; readonly step: number; readonly stop: number },
  ): Promise<{ readonly time: readonly number[]; readonly volts: readonly (readonly number[])[] }> {
    const saved = Array.from({ length: nodes }, (_, index) => `v(n${index})`);
    const points = await this.points([...lines, `.tran ${step} ${stop} 0 ${step}`, `.save time ${saved.join(' ')}`]);
    const time = points.get('time')!;
    expect(time.at(-1)).toBeGreaterThan(stop * 0.999);
    return { time, volts: saved.map((name) => points.get(name)!) };
  }
}

/** Median, 95th percentile and worst, in percent: what waveforms differ by, as shares of the driver's swing. */
export function distribution(differences: readonly number[]): string {
  const sorted = differences.toSorted((left, right) => left - right);
  const at = (share: number) => `${(100 * sorted[Math.floor(share * (sorted.length - 1))]!).toFixed(3)} %`;
  return `median ${at(0.5)}, 95th percentile ${at(0.95)}, worst ${at(1)}`;
}
