import RestwaterCore

/// Export, import, imports that can be undone, and backups.
extension Sheet {
    mutating func drawFiles(_ files: FilesView, _ slate: Slate, _ content: ScreenContent) {
        let quiet = content.files.fetching > 0 ? RestwaterState.waits : content.files.copyTrouble
        let notice = content.files.progress.map { "… \($0)" } ?? (content.notice.isBlank ? quiet : content.notice)
        // A page that a key opens has the key's word as its title.
        let title =
            switch content.files.page {
            case .imports: files.importsKey
            case .backups: files.backupsKey
            case .send, .incoming: files.title
            }
        let rest = head(title, notice: notice, slate)
        switch content.files.page {
        case .send: drawSend(files, in: rest, slate, content.paging)
        case .incoming: content.files.incoming.map { drawIncoming($0, files.sourceLabel, in: rest, slate, content.files) }
        case .imports:
            let lines = files.imports.map { line in
                ListLine(
                    says: line.says, spoken: line.says, key: line.key, keySpoken: line.keySpoken, tag: "import-\(line.id)", ask: .act(line.action))
            }
            drawList(lines, [], files.none, in: rest, slate, content.paging)
        case .backups:
            let lines = files.backups.map { line in
                ListLine(
                    says: line.says, spoken: line.says, key: line.key, keySpoken: line.keySpoken, tag: "backup-\(line.says)",
                    ask: .files(.offer(path: line.path)))
            }
            let keys = [
                filesKey(files.folder, "folder", .folder), filesKey(files.backUp, "back-up", .backUp),
                filesKey(files.lookOver, "look-over", .lookOver),
            ]
            drawList(lines, keys, files.noBackups, in: rest, slate, content.paging)
        }
        back(slate)
    }

    private func filesKey(_ label: String, _ tag: String, _ ask: FilesAsk, solid: Bool = false) -> Cell {
        Cell(face: KeyFace(label, spoken: label, solid: solid), tag: tag, ask: .files(ask))
    }

    private mutating func drawSend(_ files: FilesView, in rest: Rect, _ slate: Slate, _ paging: Paging) {
        if files.rows.contains(where: { $0.tag == paging.row }) {
            rows(files.rows, in: rest, slate, paging)
            return
        }
        let cells =
            files.rows.map(Cell.init(row:)) + [
                filesKey(files.importsKey, "imports", .imports), filesKey(files.backupsKey, "backups", .backups),
                filesKey(files.takeIn, "take-in", .pick), filesKey(files.save, "save", .save), filesKey(files.send, "send", .send, solid: true),
            ]
        let keys = slate.keysBelow(files.says, cells.count, in: rest)
        put("files-says", files.says, em: slate.text.body, at: rest.with(height: rest.height - keys), slate, order: 10, middle: false)
        grid(cells, in: rest.with(top: rest.bottom - keys, height: keys), slate, page: paging.grid)
    }

    /// What a file would bring, or has brought.
    private mutating func drawIncoming(_ incoming: IncomingView, _ label: String, in rest: Rect, _ slate: Slate, _ files: FilesContent) {
        let asks = !files.taken && incoming.brings
        let leave = filesKey(incoming.leave, "leave", .leave, solid: files.taken)
        let cells = asks ? [leave, filesKey(incoming.takeIn, "take", .takeIn, solid: true)] : [leave]
        let keys = slate.keysBelow("", cells.count, in: rest)
        let typed = asks ? slate.lineHeight : 0
        let words = rest.with(height: rest.height - keys - typed - slate.lineHeight / 3)
        put("incoming", ([incoming.title] + incoming.lines).joined(separator: "\n"), em: slate.text.body, at: words, slate, order: 10, middle: false)
        if asks { line("source", label, files.source, to: .source, .name, 0, rest.with(top: rest.bottom - keys - typed, height: typed), slate) }
        grid(cells, in: rest.with(top: rest.bottom - keys, height: keys), slate, page: 0)
    }

    private mutating func drawList(_ lines: [ListLine], _ keys: [Cell], _ none: String, in rest: Rect, _ slate: Slate, _ paging: Paging) {
        let height = keys.isEmpty ? 0 : slate.gridHeight(keys.count)
        let place = rest.with(height: rest.height - height)
        if lines.isEmpty { put("none", none, em: slate.text.body, at: place, slate, order: 10, middle: false) }
        list(lines, in: place, slate, page: paging.grid)
        if !keys.isEmpty { grid(keys, in: rest.with(top: rest.bottom - height, height: height), slate, page: 0) }
    }
}
