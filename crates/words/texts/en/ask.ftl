### Ask

