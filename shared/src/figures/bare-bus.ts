/**
 * A bus with nothing but what its signal depends on: no places, names or documentation. It stays the same while the text
 * moves, so that it tells whether a signal must be simulated again, and it is small enough to be sent to whoever does.
 */
import type { Bus, Cable, Device, Landing, Place, Port, Run, Sourced } from '../network.js';

const nowhere: Place = { file: '', start: 0, end: 0 };
const noDevice = { name: '', place: nowhere, revisions: [], revisionPlaces: [], ports: [], indicators: [], marks: [] };

export function bareBus(bus: Bus): Bus {
  const cables = new Map<Cable, Cable>();
  const bareCable = (cable: Cable): Cable => {
    const known = cables.get(cable) ?? bareCableOf(cable);
    cables.set(cable, known);
    return known;
  };
  const { kind, rate, format, samplePoint, ambient, guide, cable } = bus;
  return {
    index: 0,
    name: '',
    place: nowhere,
    blockPlace: nowhere,
    endPlace: nowhere,
    ...(kind && { kind }),
    ...(rate && { rate: bare(rate) }),
    ...(format && { format: bare(format) }),
    ...(samplePoint && { samplePoint: bare(samplePoint) }),
    ...(ambient && { ambient: bare(ambient) }),
    ...(guide && { guide: bare(guide) }),
    ...(cable && { cable: bareCable(cable) }),
    landings: bus.landings.map(bareLanding),
    runs: bus.runs.map((run) => bareRun(run, bareCable)),
    biases: bus.biases.map(({ landing, up, down, supply, builtIn }) => ({
      ...(landing !== undefined && { landing }),
      ...{ up, down, supply, builtIn, place: nowhere },
    })),
    pens: [],
    areas: [],
    earths: [],
    lengthUnit: 'm',
    damaged: false,
    unclear: false,
    biasUnclear: false,
  };
}

const bare = <T>({ value }: Sourced<T>): Sourced<T> => ({ value, place: nowhere });

function bareLanding({ index, node, port, splice, terminations, crossed, runs }: Landing): Landing {
  return {
    index,
    ...(node && {
      node: { name: '', place: nowhere, ...(node.device && { device: bareDevice(node.device) }) },
    }),
    ...(port && { port: barePort(port) }),
    ...(splice !== undefined && { splice: '' }),
    name: '',
    place: nowhere,
    visits: [],
    otherAddresses: [],
    terminations: terminations.map(({ means, resistance, capacitance }) => ({
      means,
      resistance,
      ...(capacitance !== undefined && { capacitance }),
    })),
    terminatorUnclear: false,
    ...(crossed && { crossed: nowhere }),
    shield: 'through',
    runs,
  };
}

const bareDevice = ({ role }: Device): Device => ({ ...noDevice, role });

const barePort = ({ unitLoad, resistance, capacitance, rates, edge }: Port): Port => ({
  name: '',
  place: nowhere,
  speaks: [],
  terminals: {},
  needsBias: false,
  rates,
  ...(unitLoad !== undefined && { unitLoad }),
  ...(resistance !== undefined && { resistance }),
  ...(capacitance !== undefined && { capacitance }),
  ...(edge !== undefined && { edge }),
});

function bareRun({ index, from, to, length, tap, spare, cable }: Run, bareCable: (cable: Cable) => Cable): Run {
  return {
    ...{ index, from, length, tap, spare, planned: length, place: nowhere, lengthPlace: nowhere },
    ...(to !== undefined && { to }),
    ...(cable && { cable: bareCable(cable) }),
  };
}

/** What resistance, impedance and velocity follow from; nothing of what it looks like. */
const bareCableOf = ({ name, label, documentation, colours, ...facts }: Cable): Cable => ({
  ...facts,
  name: '',
  place: nowhere,
  colours: [],
});
