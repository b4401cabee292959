/** A thread that plays swings for a diagnosis. */
import Tinypool from 'tinypool';
import { readObservations, readScenario, signaturePlayer } from '../index.js';
import type { Signature, SignatureJob } from '../analysis/index.js';
import type { DiagnosisTexts } from './io.js';

const { file, scenario: text, sheet: sheetText } = Tinypool.workerData as DiagnosisTexts;
const { scenario } = readScenario(text, { file });
const { sheet } = readObservations(sheetText, { ...(scenario && { scenario }) });
if (scenario === undefined || sheet === undefined) throw new Error(`${file} does not read`);
const play = signaturePlayer(scenario, sheet);

export default (job: SignatureJob): Signature => play(job);
