"""A pond in a storm: how much it holds, what comes, what soaks away and what runs over."""
