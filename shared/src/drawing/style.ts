/** The looks of a drawing's shapes. Nothing is told by colour alone, so that it can be printed in black and white. */

/** Any CSS colours, variables of a page included. */
export interface Colours {
  readonly ink: string;
  readonly paper: string;
  /** Of what is said beside. */
  readonly quiet: string;
  /** Of rims and rules. */
  readonly rule: string;
  readonly error: string;
  readonly warning: string;
  readonly info: string;
}

/** Dark on white, the colours of findings dark enough to be told from paper in grey too. */
export const printColours: Colours = {
  ink: '#16232b',
  paper: '#ffffff',
  quiet: '#4c5a63',
  rule: '#8a979f',
  error: '#b3261e',
  warning: '#8a5a00',
  info: '#1f5f99',
};

/** The colours of whatever page the drawing stands in, which gives them to these variables. */
export const pageColours: Colours = {
  ink: 'var(--pair-ink)',
  paper: 'var(--pair-paper)',
  quiet: 'var(--pair-quiet)',
  rule: 'var(--pair-rule)',
  error: 'var(--pair-error)',
  warning: 'var(--pair-warning)',
  info: 'var(--pair-info)',
};

export function drawingStyle({ ink, paper, quiet, rule, error, warning, info }: Colours): string {
  return [
    `text{font-family:"Helvetica Neue",Helvetica,Arial,"Liberation Sans","DejaVu Sans",sans-serif;fill:${ink}}`,
    'path,rect,circle{fill:none;stroke-linecap:round;stroke-linejoin:round}',
    `.paper{fill:${paper}}`,
    `.rule{stroke:${rule};stroke-width:1}`,
    `.line{stroke:${ink};stroke-width:2.2}`,
    '.line.other{stroke-width:5}',
    `.line.core{stroke:${paper};stroke-width:2}`,
    `.lead{stroke:${ink};stroke-width:1.4}`,
    `.thin,.crossing{stroke:${ink};stroke-width:1.3}`,
    `.shield,.shield-lead{stroke:${quiet};stroke-width:1;stroke-dasharray:4 3;stroke-linecap:butt}`,
    '.shield-lead{stroke-dasharray:none}',
    `.earth-bar,.plate-stroke{stroke:${ink};stroke-width:1.8}`,
    `.spare{stroke:${ink};stroke-width:2.2;stroke-dasharray:.1 6}`,
    `.resistor,.amplifier{stroke:${ink};stroke-width:1.6;fill:${paper}}`,
    `.clear{fill:${paper}}`,
    `.dot,.point{fill:${ink}}`,
    `.ring-dot{stroke:${ink};stroke-width:1.6;fill:${paper}}`,
    `.card{stroke:${rule};stroke-width:1;fill:${paper}}`,
    `.card.head{stroke:${ink};stroke-width:1.6}`,
    `.head-bar{fill:${ink}}`,
    '.card.again{stroke-dasharray:3 3}',
    '.card.splice{stroke-dasharray:1 3}',
    `.plate{stroke:${ink};stroke-width:1.2}`,
    `.ring{stroke:${ink};stroke-width:1.2}`,
    `.quiet{fill:${quiet}}`,
    '.tag{font-style:italic}',
    '.sign{stroke-width:1.4}',
    `.error{stroke:${error};fill:${error}}`,
    `.warning{stroke:${warning};fill:${paper}}`,
    `.info{stroke:${info};fill:${paper}}`,
    `.waived{stroke:${quiet};stroke-width:1;fill:${paper}}`,
    `.waived-tick{stroke:${quiet};stroke-width:1.3}`,
    `.waived-letter{fill:${quiet}}`,
    `.error-letter{fill:${paper}}`,
    `.warning-letter{fill:${warning}}`,
    `.info-letter{fill:${info}}`,
  ].join('\n');
}
