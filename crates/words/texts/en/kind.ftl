### Kind

