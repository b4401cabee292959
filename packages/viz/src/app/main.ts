import './app.js';
