export { toBlowDownText, type BlowDownReport } from './blow-down.js';
export { CAUTIONS, type Caution } from './caution.js';
export { toCsv, type CsvContent, type CsvOptions } from './csv.js';
export { toDocument, toJson, type RunDocument } from './json.js';
export { toTable, type TableOptions } from './test-card.js';
export { toDiagnosisText } from './diagnosis.js';
export {
  diagnosisDocument,
  type CheckLine,
  type ComparisonLine,
  type DiagnosisCatalogues,
  type DiagnosisDocument,
  type MemberLine,
  type RankedLine,
  type RemedyLine,
} from './diagnosis-document.js';
