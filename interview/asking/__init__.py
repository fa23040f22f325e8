"""An interview about anything: questions as data, answers, the way through them."""
