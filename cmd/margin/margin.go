package margin
