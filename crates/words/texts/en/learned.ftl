### Learned

