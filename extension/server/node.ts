import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { service } from '../../core/service/service.ts';
import { filesBeside } from '../disk/filesBeside.ts';
import { serve } from './server.ts';

/** The server as a process: it speaks over what the command line names (`--node-ipc`, `--stdio`). */
const connection = createConnection(ProposedFeatures.all);
serve(connection, service, {
  now: () => performance.now(),
  later: (pause, work) => {
    if (pause > 0) {
      const timer = setTimeout(work, pause);
      return () => clearTimeout(timer);
    }
    const timer = setImmediate(work);
    return () => clearImmediate(timer);
  },
  filesBeside: (caseUri) =>
    caseUri.startsWith('file:') ? filesBeside(dirname(fileURLToPath(caseUri))) : undefined,
  takes: 'base64',
});
connection.listen();
