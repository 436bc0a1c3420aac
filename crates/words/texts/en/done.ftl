### What was just done, over the page that follows

done-saved = Saved.
done-approved = Approved: the sheet is a job now. Choose its parts.
done-held = These parts are held for the job.
done-given-up = The job is given up, and its parts are free.
done-noted = Noted: it will not be proposed again in this job.
done-ordered = The order is placed.
done-order-closed = The order is closed.
done-corrected = Corrected. The part’s history has what it was before.
done-passed = Passed. The record keeps your reason.
done-batch-runs = The clocks of this batch run.
done-batch-back = The batch is taken back.
done-removed = Removed.
