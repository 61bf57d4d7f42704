import RestwaterCore

/// Files in and out, backups, and looking the log over.
extension Sheet {
    mutating func drawFiles(_ files: FilesView, _ slate: Slate, _ seen: Seen) {
        let title = seen.files.incoming?.title ?? files.title
        let rest = head(title, notice: seen.notice, slate, bottom: slate.back.top)
        if let done = seen.files.done {
            drawProgress(done, in: rest, slate)
        } else if let incoming = seen.files.incoming {
            drawIncoming(incoming, files.sourceLabel, in: rest, slate, seen)
        } else if let list = seen.files.list {
            drawList(list, files, in: rest, slate, seen.turned)
        } else if files.rows.contains(where: { $0.field == seen.turned.row }) {
            rows(files.rows, in: rest, slate, seen.turned) { .chooseFiles(field: $0, value: $1) }
        } else {
            drawFilesKeys(files, in: rest, slate, seen.turned)
        }
        back(slate)
    }

    private mutating func drawFilesKeys(_ files: FilesView, in rest: Rect, _ slate: Slate, _ turned: Turned) {
        func cell(_ label: String, _ tag: String, _ ask: FilesAsk, solid: Bool = false) -> Cell {
            Cell(face: KeyFace(label, spoken: label, solid: solid), tag: tag, ask: .files(ask))
        }
        let cells = files.rows.map(Cell.init(row:)) + [
            cell(files.send, "send", .send, solid: true), cell(files.takeIn, "take-in", .pick),
            cell(files.importsKey, "imports", .list(.imports)), cell(files.backupsKey, "backups", .list(.backups)),
            cell(files.backUp, "back-up", .backUp), cell(files.lookOver, "look-over", .lookOver),
        ]
        let keys = min(slate.gridHeight(cells.count), rest.height)
        put("says", files.says, em: slate.text.body, at: rest.with(height: rest.height - keys), slate, order: 10, middle: false)
        grid(cells, in: rest.with(top: rest.bottom - keys, height: keys), slate, page: turned.grid)
    }

    /// Entries dealt with so far. BACK gives it up.
    private mutating func drawProgress(_ done: UInt64, in place: Rect, _ slate: Slate) {
        let at = place.with(height: min(place.height, 12 * slate.mm))
        put("progress", slate.write.digits("\(done)", in: at.local), spoken: "\(done)", at: at, order: 10)
        pieces[pieces.count - 1].announced = true
    }

    /// What a file would bring, or has brought.
    private mutating func drawIncoming(_ incoming: IncomingView, _ label: String, in rest: Rect, _ slate: Slate, _ seen: Seen) {
        let asks = seen.files.incomingPath != nil && incoming.brings
        var cells: [Cell] = []
        if asks { cells.append(Cell(face: KeyFace(incoming.takeIn, spoken: incoming.takeIn, solid: true), tag: "incoming-take-in", ask: .files(.takeIn))) }
        cells.append(Cell(face: KeyFace(incoming.leave, spoken: incoming.leave), tag: "incoming-leave", ask: .files(.leave)))
        let keys = slate.gridHeight(cells.count)
        let typed = asks ? slate.lineHeight : 0
        if asks { line("source", label, seen.files.source, to: .source, 0, rest, slate) }
        let words = rest.with(top: rest.top + typed, height: rest.height - keys - typed)
        put("says", incoming.lines.joined(separator: "\n"), em: slate.text.body, at: words, slate, order: 20, middle: false)
        grid(cells, in: rest.with(top: rest.bottom - keys, height: keys), slate, page: 0)
    }

    private mutating func drawList(_ list: FilesList, _ files: FilesView, in rest: Rect, _ slate: Slate, _ turned: Turned) {
        let cells: [Cell] =
            switch list {
            case .imports:
                files.imports.enumerated().map { i, line in
                    let action: Action = line.undone ? .redoImport(id: line.id) : .undoImport(id: line.id)
                    return Cell(face: KeyFace(line.key, sub: line.says, spoken: "\(line.key): \(line.says)"), tag: "import-\(i)", ask: .act(action))
                }
            case .backups:
                files.backups.enumerated().map { i, line in
                    let face = KeyFace(line.key, sub: line.says, spoken: "\(line.key): \(line.says)")
                    return Cell(face: face, tag: "backup-\(i)", ask: .files(.lookInto(path: line.path)))
                }
            }
        if cells.isEmpty {
            put("says", files.none, em: slate.text.body, at: rest.with(height: 6 * slate.mm), slate, order: 10)
        } else {
            grid(cells, in: rest, slate, page: turned.grid)
        }
    }
}
