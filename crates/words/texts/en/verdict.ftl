### Verdict

