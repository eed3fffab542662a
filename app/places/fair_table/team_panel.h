// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The list of a team, typed or pasted in the middle of the table: below it, line by line, what is wrong, and
// how many garments of each size it comes to. A file that is dropped here, or its path alone, is read.
// Ctrl+Enter makes the garments, Escape closes.

#include "core/orders/team_list.h"

#include <QWidget>

#include <functional>
#include <map>
#include <string>
#include <tuple>
#include <vector>

class QPlainTextEdit;

namespace holdfast::app {

class KeyHint;
class Label;
class VerticalScroll;

class TeamPanel : public QWidget {
    Q_OBJECT

public:
    explicit TeamPanel(QWidget* parent = nullptr);

    // `check` says of each line besides what is wrong with it on this garment; `stock` how many of a size
    // hang on the rail.
    struct Pattern {
        QString words; // "Tee, M, Moss"
        std::vector<std::string> sizes;
        std::string size; // where a line names none
        std::function<std::vector<TeamLine>(std::vector<TeamLine>)> check;
        std::function<std::int64_t(const std::string& size)> stock;
    };
    void begin(Pattern pattern);
    const std::vector<TeamLine>& lines() const { return m_lines; }

    QSize minimumSizeHint() const override { return {200, 0}; }

signals:
    void added();
    void closed(); // by Escape

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void read();
    void check();
    QString textOfFile(const QString& path);
    void tell();
    QString sizesInWords() const;
    void add();

    Pattern m_pattern;
    std::vector<TeamLine> m_lines;
    using Written = std::tuple<std::string, std::string, std::string>; // name, number, size
    std::map<Written, Sentence>
        m_checked;     // what is wrong with it on this garment, so that a key checks its own line only
    QString m_problem; // with the whole of it
    Label* m_title = nullptr;
    QPlainTextEdit* m_text = nullptr;
    VerticalScroll* m_scroll = nullptr;
    Label* m_sum = nullptr;
    Label* m_wrong = nullptr;
    KeyHint* m_add = nullptr;
};

} // namespace holdfast::app
