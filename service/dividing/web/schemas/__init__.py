"""The wire's forms: a request loads into values of the domain, and the description is made from the same schemas."""
