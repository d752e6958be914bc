/** Answers what a client that shows the drawing asks. */
import { type Desk, landingMove, storeDrawing } from '@fieldpair/language/services';
import type { Connection } from 'vscode-languageserver';
import type { Drawing, DrawingParams, LandingMove, MoveLandingParams, ServerRequests } from '../protocol.js';
import { fileOf } from './disk.js';

/** @param failed is told of failures; the client gets an empty answer instead. */
export function serveDrawing(connection: Connection, desk: Desk, failed: (error: unknown) => void): void {
  const drawing = ({ uri, position, width, scale }: DrawingParams): Drawing | null => {
    try {
      return storeDrawing(desk, fileOf(uri), position, { width, scale }) ?? null;
    } catch (error) {
      failed(error);
      return null;
    }
  };
  const moveLanding = ({ at, landing, after }: MoveLandingParams): LandingMove => {
    try {
      return landingMove(desk, fileOf(at.uri), at.range.start, landing, after);
    } catch (error) {
      failed(error);
      return { edits: [], remeasured: 0, refused: `${landing} cannot be moved; the log says why.` };
    }
  };
  connection.onRequest('fieldpair/drawing' satisfies keyof ServerRequests, drawing);
  connection.onRequest('fieldpair/moveLanding' satisfies keyof ServerRequests, moveLanding);
}
