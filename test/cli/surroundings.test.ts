import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, openSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { casebookForTests, type Ended } from './casebook.ts';

const { folder, program, run } = casebookForTests();

const sound = 'diag: 1\ncase: All well\n';

/** Runs the program as a shell would, in surroundings of its own. */
function runIn(command: string, env: NodeJS.ProcessEnv = {}): Ended {
  const { status, stdout, stderr } = spawnSync('sh', ['-c', command], {
    cwd: folder,
    encoding: 'utf8',
    timeout: 20_000,
    env: { PATH: process.env.PATH, CASEBOOK: `${process.execPath} ${program}`, ...env },
  });
  return { status, out: stdout, err: stderr };
}

describe.runIf(process.platform === 'linux')('a machine that is not as one would wish', () => {
  beforeAll(() => {
    writeFileSync(join(folder, 'a.diag'), sound);
  });

  it.each(['/proc', '/sys', '/dev/null', '/nowhere/at/all'])(
    'has no home to keep anything in: %s',
    (home) => {
      const { status, out, err } = runIn('$CASEBOOK check a.diag', { HOME: home });
      expect([status, err]).toEqual([0, '']);
      expect(out).toContain('All well\n');
      expect(existsSync('/nowhere')).toBe(false);
    },
  );

  it('keeps compiled code in the folder of caches alone, and makes that one where it is missing', () => {
    const home = join(folder, 'home');
    mkdirSync(home);
    expect(runIn('$CASEBOOK check a.diag', { HOME: home }).status).toBe(0);
    expect(existsSync(join(home, '.cache', 'casebook'))).toBe(true);
  });

  it('has a full disk behind the output', () => {
    const says = (command: string): readonly (number | string | null)[] => {
      const { status, err } = runIn(command);
      return [status, err];
    };
    const full = [2, 'casebook: The output cannot be written: the disk is full.\n'];
    expect(says('$CASEBOOK check a.diag > /dev/full')).toEqual(full);
    expect(says('$CASEBOOK report a.diag -o - > /dev/full')).toEqual(full);
    expect(says('$CASEBOOK report a.diag -o /dev/full')).toEqual([
      2,
      'casebook: `/dev/full` cannot be written: the disk is full.\n',
    ]);
  });

  it('has nobody who reads the output, or not all of it', () => {
    expect(runIn('$CASEBOOK check a.diag a.diag | head -1')).toEqual({
      status: 0,
      out: 'All well\n',
      err: '',
    });
    expect(runIn('$CASEBOOK check a.diag >&-').status).toBe(0);
    expect(runIn('$CASEBOOK check nosuch 2>&-').status).toBe(2);
    expect(runIn('$CASEBOOK check nosuch 2> /dev/full').status).toBe(2);
  });

  it('has lost the folder that one stands in', () => {
    const { status, err } = runIn(
      'mkdir gone && cd gone && rmdir ../gone && $CASEBOOK check "$OLDPWD/a.diag"',
    );
    expect([status, err.split('\n').at(-2)]).toEqual([
      2,
      'casebook: The folder that you stand in is not there any more. Change to another one.',
    ]);
  });

  it('keeps a folder or a file to somebody else', () => {
    mkdirSync(join(folder, 'locked'));
    writeFileSync(join(folder, 'mine.diag'), sound);
    chmodSync(join(folder, 'locked'), 0);
    chmodSync(join(folder, 'mine.diag'), 0);
    // The administrator may read everything: there it is read.
    const isAdministrator = canOpen(join(folder, 'mine.diag'));
    expect(run('check', 'locked').err).toBe(
      isAdministrator
        ? 'casebook: There is no case (a file whose name ends in .diag) in `locked`.\n'
        : 'casebook: The folder `locked` cannot be read: this user may not.\n',
    );
    const { status, out } = run('check', 'mine.diag', 'a.diag');
    expect([status, out.includes('The file cannot be read: this user may not.')]).toEqual(
      isAdministrator ? [0, false] : [1, true],
    );
    rmSync(join(folder, 'locked'), { recursive: true });
    rmSync(join(folder, 'mine.diag'));
  });
});

function canOpen(path: string): boolean {
  try {
    openSync(path, 'r');
    return true;
  } catch {
    return false;
  }
}
