// Generated from fieldpair.langium by `npm run generate`; do not edit.
/** Each statement of the language: how it is written, its keywords, and what its words in capitals stand for. */
export const forms = {
  Import: {
    form: 'import "PATH"',
    keywords: ['import'],
    values: ['PATH'],
  },
  CableDeclaration: {
    form: 'cable NAME ["LABEL"] { … }',
    keywords: ['cable'],
    values: ['NAME', 'LABEL'],
  },
  Conductor: {
    form: 'conductor SIZE [MAKE …]',
    keywords: ['conductor'],
    values: ['SIZE', 'MAKE'],
  },
  Twist: {
    form: 'twisted pairs PAIRS | untwisted',
    keywords: ['twisted', 'pairs', 'untwisted'],
    values: ['PAIRS'],
  },
  CableShield: {
    form: 'shield [MAKE …]',
    keywords: ['shield'],
    values: ['MAKE'],
  },
  CableClass: {
    form: 'class NAME',
    keywords: ['class'],
    values: ['NAME'],
  },
  Impedance: {
    form: 'impedance VALUE',
    keywords: ['impedance'],
    values: ['VALUE'],
  },
  Capacitance: {
    form: 'capacitance VALUE',
    keywords: ['capacitance'],
    values: ['VALUE'],
  },
  Velocity: {
    form: 'velocity VALUE',
    keywords: ['velocity'],
    values: ['VALUE'],
  },
  Resistance: {
    form: 'resistance VALUE',
    keywords: ['resistance'],
    values: ['VALUE'],
  },
  CableColours: {
    form: 'colours COLOUR, …',
    keywords: ['colours'],
    values: ['COLOUR'],
  },
  Carries: {
    form: 'carries CURRENT',
    keywords: ['carries'],
    values: ['CURRENT'],
  },
  DeviceDeclaration: {
    form: 'device NAME ["LABEL"] { … }',
    keywords: ['device'],
    values: ['NAME', 'LABEL'],
  },
  Role: {
    form: 'role ROLE',
    keywords: ['role'],
    values: ['ROLE'],
  },
  Revisions: {
    form: 'revision NAME, …',
    keywords: ['revision'],
    values: ['NAME'],
  },
  Indicator: {
    form: 'indicator NAME ["TEXT"]',
    keywords: ['indicator'],
    values: ['NAME', 'TEXT'],
  },
  Mark: {
    form: 'mark "TEXT"',
    keywords: ['mark'],
    values: ['TEXT'],
  },
  PortDeclaration: {
    form: 'port NAME ["LABEL"] : KIND [{ … }]',
    keywords: ['port'],
    values: ['NAME', 'LABEL', 'KIND'],
  },
  Terminals: {
    form: 'terminals (+ | - | shield | common) "MARK" …',
    keywords: ['terminals', 'shield', 'common'],
    values: ['MARK'],
  },
  Speaks: {
    form: 'speaks KIND, …',
    keywords: ['speaks'],
    values: ['KIND'],
  },
  Polarity: {
    form: 'polarity VALUE',
    keywords: ['polarity'],
    values: ['VALUE'],
  },
  Load: {
    form: 'load NUMERATOR[/DENOMINATOR]',
    keywords: ['load'],
    values: ['NUMERATOR', 'DENOMINATOR'],
  },
  PortTerminator: {
    form: 'terminator (switch | fixed) RESISTANCE [capacitor CAPACITANCE]',
    keywords: ['terminator', 'switch', 'fixed', 'capacitor'],
    values: ['RESISTANCE', 'CAPACITANCE'],
  },
  PortBias: {
    form: 'bias (needed | (switch | fixed) UP [to + DOWN to -] [source SUPPLY])',
    keywords: ['bias', 'needed', 'switch', 'fixed', 'to', 'source'],
    values: ['UP', 'DOWN', 'SUPPLY'],
  },
  PortAddress: {
    form: 'address MEANS [LOW..HIGH] [of POSITIONS] [CODING …]',
    keywords: ['address', 'of'],
    values: ['MEANS', 'LOW', 'HIGH', 'POSITIONS', 'CODING'],
  },
  Rates: {
    form: 'rates RATE, …',
    keywords: ['rates'],
    values: ['RATE'],
  },
  Edge: {
    form: 'edge TIME',
    keywords: ['edge'],
    values: ['TIME'],
  },
  Delay: {
    form: 'delay TIME',
    keywords: ['delay'],
    values: ['TIME'],
  },
  Reserved: {
    form: 'reserved [in REVISION, …] ["REASON"]',
    keywords: ['reserved', 'in'],
    values: ['REVISION', 'REASON'],
  },
  Twin: {
    form: 'twin of PORT ["REASON"]',
    keywords: ['twin', 'of'],
    values: ['PORT', 'REASON'],
  },
  Supplies: {
    form: 'supplies VOLTAGE [FORM] [within TOLERANCE] [limit LIMIT] [class MARKED]',
    keywords: ['supplies', 'within', 'limit', 'class'],
    values: ['VOLTAGE', 'FORM', 'TOLERANCE', 'LIMIT', 'MARKED'],
  },
  Draws: {
    form: 'draws AMOUNT [FORM] [above LOW] [below HIGH]',
    keywords: ['draws', 'above', 'below'],
    values: ['AMOUNT', 'FORM', 'LOW', 'HIGH'],
  },
  Normally: {
    form: 'normally (closed | open)',
    keywords: ['normally', 'closed', 'open'],
    values: [],
  },
  Expects: {
    form: 'expects resistor RESISTANCE',
    keywords: ['expects', 'resistor'],
    values: ['RESISTANCE'],
  },
  AtMost: {
    form: 'at most AMOUNT (contacts | of cable)',
    keywords: ['at', 'most', 'contacts', 'of', 'cable'],
    values: ['AMOUNT'],
  },
  Reads: {
    form: 'reads MEANING [above LOW] [below HIGH]',
    keywords: ['reads', 'above', 'below'],
    values: ['MEANING', 'LOW', 'HIGH'],
  },
  StoreDeclaration: {
    form: 'store NAME [continued] ["LABEL"] { … }',
    keywords: ['store', 'continued'],
    values: ['NAME', 'LABEL'],
  },
  NodeDeclaration: {
    form: 'node NAME ["LABEL"] [: DEVICE] [revision REVISION]',
    keywords: ['node', 'revision'],
    values: ['NAME', 'LABEL', 'DEVICE', 'REVISION'],
  },
  NetworkDeclaration: {
    form: 'network NAME ["LABEL"] { [NODE [address ADDRESS], …] }',
    keywords: ['network', 'address'],
    values: ['NAME', 'LABEL', 'NODE', 'ADDRESS'],
  },
  Waiver: {
    form: 'waive RULE [at NODE[.PORT]] because "REASON"',
    keywords: ['waive', 'at', 'because'],
    values: ['RULE', 'NODE', 'PORT', 'REASON'],
  },
  BusDeclaration: {
    form: 'bus NAME ["LABEL"] : KIND [RATE] [FORMAT] [on CABLE] { … }',
    keywords: ['bus', 'on'],
    values: ['NAME', 'LABEL', 'KIND', 'RATE', 'FORMAT', 'CABLE'],
  },
  From: {
    form: 'from LANDING',
    keywords: ['from'],
    values: ['LANDING'],
  },
  Run: {
    form: '[tap] LENGTH [OPTION …] [to LANDING]',
    keywords: ['tap', 'to'],
    values: ['LENGTH', 'OPTION', 'LANDING'],
  },
  Area: {
    form: 'area NAME',
    keywords: ['area'],
    values: ['NAME'],
  },
  OnCable: {
    form: 'on CABLE',
    keywords: ['on'],
    values: ['CABLE'],
  },
  Built: {
    form: 'built LENGTH',
    keywords: ['built'],
    values: ['LENGTH'],
  },
  Cords: {
    form: 'cords LENGTH [of CABLE]',
    keywords: ['cords', 'of'],
    values: ['LENGTH', 'CABLE'],
  },
  Spare: {
    form: 'spare',
    keywords: ['spare'],
    values: [],
  },
  BesideMains: {
    form: 'beside mains',
    keywords: ['beside', 'mains'],
    values: [],
  },
  Fuse: {
    form: 'fuse CURRENT',
    keywords: ['fuse'],
    values: ['CURRENT'],
  },
  Landing: {
    form: '(splice SPLICE | NODE[.PORT]) ["LABEL"] [: DEVICE] [PROPERTY …]',
    keywords: ['splice'],
    values: ['SPLICE', 'NODE', 'PORT', 'LABEL', 'DEVICE', 'PROPERTY'],
  },
  LandingAddress: {
    form: 'address ADDRESS',
    keywords: ['address'],
    values: ['ADDRESS'],
  },
  Terminate: {
    form: 'terminate (switch | resistor RESISTANCE [capacitor CAPACITANCE])',
    keywords: ['terminate', 'switch', 'resistor', 'capacitor'],
    values: ['RESISTANCE', 'CAPACITANCE'],
  },
  SwitchOff: {
    form: 'switch off',
    keywords: ['switch', 'off'],
    values: [],
  },
  Crossed: {
    form: 'crossed',
    keywords: ['crossed'],
    values: [],
  },
  LandingShield: {
    form: 'shield (through | open | floating)',
    keywords: ['shield', 'through', 'open', 'floating'],
    values: [],
  },
  LandingRevision: {
    form: 'revision REVISION',
    keywords: ['revision'],
    values: ['REVISION'],
  },
  Breaks: {
    form: 'breaks (+ | -) [bridged BRIDGE]',
    keywords: ['breaks', 'bridged'],
    values: ['BRIDGE'],
  },
  Across: {
    form: 'across [through THROUGH]',
    keywords: ['across', 'through'],
    values: ['THROUGH'],
  },
  BusShield: {
    form: 'shield earthed at NODE[.PORT] [through RESISTANCE [capacitor CAPACITANCE]]',
    keywords: ['shield', 'earthed', 'at', 'through', 'capacitor'],
    values: ['NODE', 'PORT', 'RESISTANCE', 'CAPACITANCE'],
  },
  BusBias: {
    form: 'bias at NODE[.PORT] (switch | UP [to + DOWN to -] [source SUPPLY])',
    keywords: ['bias', 'at', 'switch', 'to', 'source'],
    values: ['NODE', 'PORT', 'UP', 'DOWN', 'SUPPLY'],
  },
  Ambient: {
    form: 'ambient TEMPERATURE',
    keywords: ['ambient'],
    values: ['TEMPERATURE'],
  },
  SamplePoint: {
    form: 'sample at POINT',
    keywords: ['sample', 'at'],
    values: ['POINT'],
  },
  Guide: {
    form: 'guide NAME',
    keywords: ['guide'],
    values: ['NAME'],
  },
  BusColours: {
    form: 'colours (+ | - | shield | common) COLOUR …',
    keywords: ['colours', 'shield', 'common'],
    values: ['COLOUR'],
  },
} as const;
