-- What wrk asks: every number to 1,000 in an order that jumps about; and how it tells what came of it.
local number = 0

request = function()
  number = (number + 577) % 1000
  local body = '{"work": {"divisions": ' .. number + 1 .. '}}'
  return wrk.format("POST", "/v1/solve", {["Content-Type"] = "application/json"}, body)
end

done = function(summary, latency, requests)
  local errors = summary.errors
  io.write(string.format(
    '\n{"answered": %d, "half_ms": %.2f, "p99_ms": %.2f, "longest_ms": %.2f, "refused": %d, "broken": %d}\n',
    summary.requests, latency:percentile(50) / 1000, latency:percentile(99) / 1000, latency.max / 1000,
    errors.status, errors.connect + errors.read + errors.write + errors.timeout))
end
