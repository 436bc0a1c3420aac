### Reading

