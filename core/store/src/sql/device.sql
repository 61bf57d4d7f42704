SELECT value FROM meta WHERE key = 'device'
