### Today

