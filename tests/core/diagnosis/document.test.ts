import { expect, it } from 'vitest';
import { catalogues, checks, diagnosisDocument, type Diagnosis } from '@wheelwell/core';

const sheet = {
  ...{ aircraft: 'Made up', scenario: '', card: '', date: '', by: '', note: '' },
  ...{ readingError: 0.2, conditions: {}, swings: [], looks: [] },
};
const explanation = {
  causes: [{ fault: 'line-pinched', on: 'up-main' }],
  ...{ probability: 0.95, comparisons: [] },
  severities: [{ at: 0.5, range: [0.4, 0.6] as const }],
};

function told(change: Partial<Diagnosis>) {
  const diagnosis: Diagnosis = {
    ...{ groups: [{ probability: 0.95, members: [explanation] }], checks: [], unused: [] },
    ...{ established: false, unknown: 0, runs: 9, whole: true },
    ...change,
  };
  const of = { title: 'Made up', faults: catalogues.faults, checks };
  const { verdict, ranking } = diagnosisDocument(of, sheet, diagnosis, 'us');
  return { verdict, odds: ranking[0]?.odds, severity: ranking[0]?.members[0]?.severityText };
}

it('says of a ranking that is not whole that it holds so far, and finds no word for how likely that is', () => {
  const whole = told({});
  expect(whole.verdict).toMatch(/^Not established yet\. Likeliest, with 95 %: /);
  expect(whole.odds).toBe('nearly certain');
  const early = told({ whole: false });
  expect(early.verdict).toMatch(
    /^Not established yet\. Likeliest of those played so far, with 95 %/,
  );
  expect(early.odds).toBe('so far');
});

it('tells of two causes how bad each is', () => {
  expect(told({}).severity).toBe('50 % (40 % to 60 %)');
  const second = { fault: 'dry-bearing', on: 'left-leg' };
  const both = {
    ...explanation,
    causes: [...explanation.causes, second],
    severities: [...explanation.severities, { at: 0.2, range: [0.1, 0.3] as const }],
  };
  const { severity, verdict } = told({ groups: [{ probability: 0.95, members: [both] }] });
  expect(severity).toBe('50 % (40 % to 60 %) and 20 % (10 % to 30 %)');
  expect(verdict).toContain(`${catalogues.faults['dry-bearing'].title}, left-leg`);
});

it('does not say that no known cause fits before all of them were played', () => {
  expect(told({ unknown: 0.99 }).verdict).toMatch(
    /^NONE OF THE KNOWN CAUSES FITS what was noted\./,
  );
  expect(told({ unknown: 0.99, whole: false }).verdict).toMatch(
    /^No cause played so far fits what/,
  );
});
