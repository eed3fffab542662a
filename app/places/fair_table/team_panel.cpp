// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/team_panel.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QBoxLayout>
#include <QFile>
#include <QKeyEvent>
#include <QPlainTextEdit>
#include <QUrl>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr qint64 kLargestFile = 1'000'000; // bytes; two hundred lines are far below
constexpr int kLeastText = 4;              // lines that are seen of it

bool isSubmit(const QKeyEvent& key) {
    return (key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter) &&
           key.modifiers() & Qt::ControlModifier;
}

// A file that was dropped, or a path that was pasted, is one line of text.
QString pathIn(const QString& text) {
    const QString line = text.trimmed();
    if (line.contains(u'\n'))
        return {};
    if (line.startsWith(QStringLiteral("file://")))
        return QUrl(line).toLocalFile();
    return line.startsWith(u'/') ? line : QString();
}

} // namespace

TeamPanel::TeamPanel(QWidget* parent)
    : QWidget(parent)
    , m_title(new Label({}, Type::BodyStrong))
    , m_text(new QPlainTextEdit)
    , m_scroll(new VerticalScroll)
    , m_sum((new Label({}, Type::Small))->wrapped())
    , m_wrong((new Label({}, Type::SmallStrong, &Tokens::madder))->wrapped())
    , m_add(new KeyHint({}, QKeySequence(Qt::CTRL | Qt::Key_Return))) {
    m_text->setObjectName(QStringLiteral("teamList"));
    m_text->setAccessibleName(tr("Team list"));
    m_text->setPlaceholderText(
        tr("Juno, 7, M\nWren, 12, L\n\nor pasted from a spreadsheet, or a file dropped here"));
    m_text->setTabChangesFocus(true);
    m_text->setMinimumHeight(kLeastText * lineHeight(Type::Body));
    m_text->installEventFilter(this);
    giveFocusRing(m_text);
    m_sum->setObjectName(QStringLiteral("teamSum"));
    m_wrong->setObjectName(QStringLiteral("teamWrong"));
    m_add->setObjectName(QStringLiteral("addTeam"));
    m_add->setTargetHeight(kStallTarget);
    m_add->actOnClick([this] { add(); });
    auto* close = new KeyHint(tr("close"), QKeySequence(Qt::Key_Escape));
    close->setTargetHeight(kStallTarget);
    close->actOnClick([this] { emit closed(); });

    m_scroll->column()->addWidget(m_sum);
    m_scroll->column()->addWidget(m_wrong);
    m_scroll->column()->addStretch();
    auto* hints = new QHBoxLayout;
    hints->setSpacing(kSpace16);
    hints->addWidget(m_add);
    hints->addWidget(close);
    hints->addStretch();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(kSpace12, kSpace8, kSpace12, kSpace8);
    column->setSpacing(kSpace8);
    column->addWidget(m_title);
    column->addWidget(m_text, 3);
    column->addWidget(m_scroll, 2);
    column->addLayout(hints);
    connect(m_text, &QPlainTextEdit::textChanged, this, [this] {
        read();
        tell();
    });
}

void TeamPanel::begin(Pattern pattern) {
    m_pattern = std::move(pattern);
    m_title->setText(tr("Team list: each %1").arg(m_pattern.words));
    m_checked.clear();
    m_text->clear();
    read();
    tell();
    m_text->setFocus(Qt::ShortcutFocusReason);
}

void TeamPanel::read() {
    m_problem.clear();
    m_lines.clear();
    QString text = m_text->toPlainText();
    if (const QString path = pathIn(text); !path.isEmpty())
        text = textOfFile(path);
    auto lines = readTeamList(text.toStdString(), m_pattern.sizes);
    if (!lines.ok())
        m_problem = words(lines.error().message);
    else
        m_lines = std::move(lines).value();
    check();
}

void TeamPanel::check() {
    const auto written = [](const TeamLine& line) { return Written{line.name, line.number, line.size}; };
    std::vector<TeamLine> fresh;
    for (const TeamLine& line : m_lines)
        if (line.wrong.empty() && !m_checked.contains(written(line)))
            fresh.push_back(line);
    for (TeamLine& line : m_pattern.check(std::move(fresh)))
        m_checked.insert_or_assign(written(line), std::move(line.wrong));
    for (TeamLine& line : m_lines)
        if (line.wrong.empty())
            line.wrong = m_checked.at(written(line));
}

QString TeamPanel::textOfFile(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        m_problem = tr("%1 cannot be read: %2.").arg(path, file.errorString());
        return {};
    }
    if (file.size() > kLargestFile) {
        m_problem = tr("%1 is too large for a list of garments.").arg(path);
        return {};
    }
    const QByteArray bytes = file.readAll();
    QString text = QString::fromUtf8(bytes);
    return text.contains(QChar::ReplacementCharacter) ? QString::fromLatin1(bytes) : text;
}

// "5 M, 3 L (2 on the rail)": in the order of the style's sizes.
QString TeamPanel::sizesInWords() const {
    QStringList sizes;
    for (const std::string& size : m_pattern.sizes) {
        const auto count = std::ranges::count_if(m_lines, [&](const TeamLine& line) {
            return line.wrong.empty() && (line.size.empty() ? m_pattern.size : line.size) == size;
        });
        if (count == 0)
            continue;
        const std::int64_t there = m_pattern.stock(size);
        sizes.append(there >= count ? tr("%1 %2").arg(count).arg(words(size))
                                    : tr("%1 %2 (%3 on the rail)").arg(count).arg(words(size)).arg(there));
    }
    return sizes.join(tr(", "));
}

void TeamPanel::tell() {
    const auto good = std::ranges::count_if(m_lines, [](const TeamLine& line) { return line.wrong.empty(); });
    const QString sizes = sizesInWords();
    const QString made = tr("%n garment|%n garments", nullptr, howMany(good));
    m_sum->setText(good == 0 ? QString() : sizes.isEmpty() ? made : tr("%1: %2").arg(made, sizes));
    QStringList wrong;
    if (!m_problem.isEmpty())
        wrong.append(m_problem);
    for (const TeamLine& line : m_lines)
        if (!line.wrong.empty())
            wrong.append(tr("Line %1: %2").arg(line.line).arg(words(line.wrong)));
    m_wrong->setText(wrong.join(u'\n'));
    m_add->setWords(tr("add %n garment|add %n garments", nullptr, howMany(good)));
}

void TeamPanel::add() {
    const bool isAnyWrong = !m_problem.isEmpty() || std::ranges::any_of(m_lines, [](const TeamLine& line) {
        return !line.wrong.empty();
    });
    if (!isAnyWrong && !m_lines.empty())
        emit added();
    else if (m_lines.empty() && m_problem.isEmpty())
        m_wrong->setText(tr("Type a name, a number or both in each line."));
    else if (!m_wrong->text().endsWith(tr("Put these lines right first.")))
        m_wrong->setText(m_wrong->text() + u'\n' + tr("Put these lines right first."));
}

bool TeamPanel::eventFilter(QObject* watched, QEvent* event) {
    if (watched != m_text)
        return QWidget::eventFilter(watched, event);
    if (event->type() == QEvent::ShortcutOverride) {
        event->accept(); // every key is the list's own
        return true;
    }
    if (event->type() != QEvent::KeyPress)
        return false;
    const auto& key = *static_cast<QKeyEvent*>(event);
    if (key.key() == Qt::Key_Escape) {
        emit closed();
        return true;
    }
    if (isSubmit(key)) {
        if (!key.isAutoRepeat())
            add();
        return true;
    }
    return false;
}

} // namespace holdfast::app
