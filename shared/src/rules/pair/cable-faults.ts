/** What is wrong with a cable for a kind of bus. */
import type { CableNeeds } from '../../limits/cable.js';
import { categoryWanted } from '../../limits/ethernet.js';
import type { Cable } from '../../network.js';
import { conductorArea, gaugeArea } from '../../physics/conductor.js';
import { formatNumber, formatOhms } from '../../quantity.js';
import { isShielded, sizeOf } from './cables.js';

/** A metric conductor that rounds to a gauge counts as that gauge: 0.2 mm2 passes as 24 AWG (0.205 mm2). */
const areaTolerance = 0.05;

/** What is wrong with a cable, as clauses of a message. The lack of a shield counts where `shieldMatters`. */
export function cableFaults(cable: Cable, needs: CableNeeds, shieldMatters: boolean, rate?: number): string[] {
  const faults: string[] = [];
  const wanted = needs.category && categoryWanted(cable, rate);
  if (wanted !== undefined) {
    const speed = rate === undefined ? '' : ` at ${formatNumber(rate / 1e6, 1)} Mbit/s`;
    faults.push(`it is of class ${cable.class}, and ${wanted} is due${speed} (from memory of IEEE 802.3)`);
  }
  if (shieldMatters && needs.shield !== undefined && isShielded(cable) === false) {
    faults.push(`it has no shield, which ${needs.shield} asks for`);
  }
  if (needs.twisted !== undefined && cable.pairs === 0) faults.push(`it is not twisted, and ${needs.twisted} is due`);
  const { impedance, capacitance, gauge } = needs;
  if (
    impedance &&
    cable.impedance !== undefined &&
    (cable.impedance < impedance.low || impedance.high < cable.impedance)
  ) {
    faults.push(
      `it has ${formatOhms(cable.impedance)}, not ${impedance.low} to ${impedance.high} ohm (${impedance.source})`,
    );
  }
  if (capacitance && cable.capacitance !== undefined && capacitance.below <= cable.capacitance) {
    faults.push(
      `it has ${formatNumber(cable.capacitance * 1e12, 1)} pF/m, and less than ${capacitance.below * 1e12} pF/m is due (${capacitance.source})`,
    );
  }
  const area = conductorArea(cable);
  if (gauge && area !== undefined && area < gaugeArea(gauge.finest) * (1 - areaTolerance)) {
    faults.push(`its ${sizeOf(cable)} are thinner than ${gauge.finest} AWG, the finest that ${gauge.source} speaks of`);
  }
  return faults;
}
