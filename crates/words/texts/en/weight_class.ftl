### Weight class

