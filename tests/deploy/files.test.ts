/** The files of `deploy` are in order, and would be found out if they were not. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { faultsOf } from './files.js';

vi.setConfig({ testTimeout: 120_000 });
const own = (name: string): string => readFileSync(projectFile('deploy', name), 'utf8');
const withoutCaddy = spawnSync('caddy', ['version']).error !== undefined;
const withoutSystemd = spawnSync('systemd-analyze', ['--version']).error !== undefined;

describe('each file of deploy', () => {
  it.each(['Containerfile', 'compose.yaml', 'kubernetes.yaml'])('%s is in order', (name) => {
    expect(faultsOf(name, own(name))).toEqual([]);
  });
  it.skipIf(withoutSystemd).each(['tellshelf.service', 'tellshelf-satellite.service'])(
    '%s is in order',
    (name) => expect(faultsOf(name, own(name))).toEqual([]),
  );
  it.skipIf(withoutCaddy)('Caddyfile is in order', () =>
    expect(faultsOf('Caddyfile', own('Caddyfile'))).toEqual([]),
  );
  it('of a kind that nothing here reads is said to be so', () => {
    expect(faultsOf('citus.sql', own('citus.sql'))).toBeNull();
  });
});

describe('a slip is found', () => {
  const slips: readonly (readonly [string, string | RegExp, string, RegExp])[] = [
    ['Containerfile', 'FROM node', 'FORM node', /line \d+: .*FORM/],
    ['Containerfile', /^USER .*$/m, '', /runs as root/],
    ['Containerfile', /node:22-bookworm-slim$/m, 'node', /node is named without a release/],
    ['Containerfile', /^CMD .*$/m, 'CMD node .run.mjs serve', /runs in a shell/],
    ['compose.yaml', 'restart: unless-stopped', 'restrat: unless-stopped', /restrat/],
    ['compose.yaml', "ports: ['80:80'", "ports: ['80:80', {}, true", /ports/],
    ['compose.yaml', 'stop_grace_period: 20s', 'stop_grace_period: twenty', /stop_grace_period/],
    ['compose.yaml', '443:443/udp', '443:https', /ports/],
    ['kubernetes.yaml', 'replicas: 3', "replicas: '3'", /replicas must be integer/],
    ['kubernetes.yaml', 'readinessProbe:', 'readynessProbe:', /readynessProbe/],
    ['kubernetes.yaml', 'policy/v1', 'policy/v7', /there is no policy\/v7/],
    ['kubernetes.yaml', 'kind: NetworkPolicy', 'kind: NetPolicy', /has no NetPolicy/],
    ['kubernetes.yaml', 'spec:\n', 'spec: [\n', /./],
  ];
  it.each(slips)('in %s: %s', (name, from, to, told) => {
    const text = own(name);
    const slipped = text.replace(from, to);
    expect(slipped).not.toBe(text);
    expect(faultsOf(name, slipped)?.join('\n')).toMatch(told);
  });
  it.skipIf(withoutCaddy)('in the proxy’s file', () => {
    const slipped = own('Caddyfile').replace('lb_policy least_conn', 'lb_policy least_kind');
    expect(faultsOf('Caddyfile', slipped)?.join('\n')).toMatch(/least_kind/);
  });
  it.skipIf(withoutSystemd)('in a unit', () => {
    const slipped = own('tellshelf.service').replace('ProtectHome=yes', 'ProtectHome=perhaps');
    expect(faultsOf('tellshelf.service', slipped)?.join('\n')).toMatch(/:24: .*protect home/);
  });
});
