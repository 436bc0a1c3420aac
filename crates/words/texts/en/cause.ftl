### Cause

