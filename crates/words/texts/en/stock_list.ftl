### Stock list

