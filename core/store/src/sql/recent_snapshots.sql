SELECT session.id, snapshot.ops, snapshot.last_order, snapshot.version, snapshot.body
FROM session JOIN snapshot ON snapshot.session = session.no
WHERE snapshot.ops = session.ops AND snapshot.last_order = session.last_order
ORDER BY session.began DESC
LIMIT ?1
