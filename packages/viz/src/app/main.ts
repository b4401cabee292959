import './app.js';
import './renewal.js';
