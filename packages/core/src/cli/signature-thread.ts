/** A thread that plays swings for a diagnosis. */
import { signaturePlayer } from '../index.js';

export default signaturePlayer();
