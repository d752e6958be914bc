/**
 * The outline of a file: catalogue entries with their ports, stores with their nodes, networks and buses. Each kind of
 * thing has a symbol of its own; editors draw objects, modules, packages and namespaces alike, so one of them is enough.
 */
import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver';
import type { Declaration, Name, StoreMember } from '../generated/reader.js';
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

  const ofMember = (member: StoreMember): DocumentSymbol[] => {
    switch (member.type) {
      case 'NodeDeclaration':
        return symbol(SymbolKind.Variable, member.device?.text ?? 'node', member.name, member);
      case 'NetworkDeclaration':
        return symbol(SymbolKind.Array, 'network', member.name, member);
      case 'BusDeclaration': {
        const landed = member.statements.flatMap((statement) => {
          if (statement.type !== 'From' && statement.type !== 'Run') return [];
          const { landing } = statement;
          return landing
            ? symbol(SymbolKind.Field, statement.type === 'From' ? 'from' : '', landing.splice ?? landing.node, landing)
            : [];
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
