### Verdict
