SELECT min(device) FROM session WHERE device > ?1
