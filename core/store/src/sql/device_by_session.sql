-- An order has the device at its 13th to 28th byte.
SELECT substr(own_order, 13, 16) FROM session WHERE own_order IS NOT NULL LIMIT 1
