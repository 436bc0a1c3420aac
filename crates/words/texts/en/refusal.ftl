### What is refused, wherever it comes from

refusal-with-next = { $what }. { $next }
refusal-unknown = there is no { $what } “{ $name }”
