#!/usr/bin/env node
import { main } from '../dist/cli/main.js';

main();
