import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { service } from '../../core/service/service.ts';
import { serve } from './server.ts';

/** The server as a web worker. */
const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self));
serve(connection, service, {
  now: () => performance.now(),
  later: (pause, work) => {
    const timer = setTimeout(work, pause);
    return () => clearTimeout(timer);
  },
  filesBeside: () => undefined,
  takes: 'bytes',
});
connection.listen();
