### Grid

