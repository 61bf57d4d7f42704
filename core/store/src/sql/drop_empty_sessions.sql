DELETE FROM session WHERE no NOT IN (SELECT session FROM op)
