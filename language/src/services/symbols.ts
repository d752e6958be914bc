/**
 * The outline of a file: catalogue entries with their ports, stores with their nodes, networks and buses, and the areas
 * that these lead through. Each kind of
 * thing has a symbol of its own; editors draw objects, modules, packages and namespaces alike, so one of them is enough.
 */
import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver';
import type { Declaration, From, Name, Run, StoreMember } from '../generated/reader.js';
import { byAreas } from './areas.js';
import type { Desk } from './desk.js';

interface Spot {
  readonly start: number;
  readonly end: number;
}

export function symbols(desk: Desk, file: string): DocumentSymbol[] {
  const source = desk.project.sourceOf(file);
  const symbol = (
    kind: SymbolKind,
    detail: string,
    name: Name | undefined,
    whole: Spot,
    children: DocumentSymbol[] = [],
  ) =>
    name?.text
      ? [{ name: name.text, detail, kind, range: rangeOf(whole), selectionRange: rangeOf(name), children }]
      : [];
  const rangeOf = ({ start, end }: Spot) => desk.rangeOf({ file, start, end });

  const ofStep = ({ type, landing }: From | Run): DocumentSymbol[] =>
    landing ? symbol(SymbolKind.Field, type === 'From' ? 'from' : '', landing.splice ?? landing.node, landing) : [];
  const ofMember = (member: StoreMember): DocumentSymbol[] => {
    switch (member.type) {
      case 'NodeDeclaration':
        return symbol(SymbolKind.Variable, member.device?.text ?? 'node', member.name, member);
      case 'NetworkDeclaration':
        return symbol(SymbolKind.Array, 'network', member.name, member);
      case 'BusDeclaration': {
        const landed = byAreas(member.statements).flatMap((one) => {
          if (!('area' in one)) return ofStep(one);
          const { area, steps } = one;
          const whole = { start: area.start, end: steps.at(-1)?.end ?? area.end };
          return symbol(SymbolKind.Struct, 'area', area.name, whole, steps.flatMap(ofStep));
        });
        return symbol(SymbolKind.Interface, member.kind?.text ?? 'bus', member.name, member, landed);
      }
      default:
        return [];
    }
  };
  const ofDeclaration = (declaration: Declaration): DocumentSymbol[] => {
    switch (declaration.type) {
      case 'CableDeclaration':
        return symbol(SymbolKind.Constant, 'cable', declaration.name, declaration);
      case 'DeviceDeclaration': {
        const ports = declaration.members.flatMap((member) =>
          member.type === 'PortDeclaration'
            ? symbol(SymbolKind.Property, member.kind?.text ?? 'port', member.name, member)
            : [],
        );
        return symbol(SymbolKind.Class, 'device', declaration.name, declaration, ports);
      }
      case 'StoreDeclaration':
        return symbol(SymbolKind.Module, 'store', declaration.name, declaration, declaration.members.flatMap(ofMember));
    }
  };
  return (source?.sheet.declarations ?? []).flatMap(ofDeclaration);
}
