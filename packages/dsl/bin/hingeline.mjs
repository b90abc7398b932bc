#!/usr/bin/env node
import "../dist-cli/bin.js";
