#!/usr/bin/env node
import { main } from '../dist/bundle/wheelwell.js';

await main();
