"""The interview on plain lines, and the streams it runs on."""
