SELECT last_order FROM session ORDER BY last_order DESC LIMIT 1
