### Scale check

