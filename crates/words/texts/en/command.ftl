### Command

