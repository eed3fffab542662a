// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/colour_rows.h"

#include "app/desk/formats.h"
#include "app/slips/shade_picker.h"
#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"

#include <QBoxLayout>
#include <QEvent>
#include <QLineEdit>
#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr std::size_t kMostColours = 60;
constexpr int kSwatch = 28;

// The shade of one row, painted.
class RowSwatch : public QWidget {
public:
    explicit RowSwatch(std::uint32_t rgb)
        : m_rgb(rgb) {
        setFixedSize(kSwatch, kSwatch);
    }

    void setShade(std::uint32_t rgb) {
        m_rgb = rgb;
        update();
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        paintSwatch(painter, QRectF(rect()), colourOf(m_rgb), kKeyRadius);
    }

private:
    std::uint32_t m_rgb;
};

// Each new row begins with another shade of the card.
std::uint32_t shadeOfRow(std::size_t row) {
    constexpr std::size_t kStep = 5; // hues apart, so that neighbours differ
    const auto column = static_cast<int>(row * kStep % ShadeCard::kColumns);
    const auto depth = static_cast<int>(1 + row / ShadeCard::kColumns % 3);
    return ShadeCard::shadeAt(column, depth).rgb() & 0xffffffU;
}

} // namespace

ColourRows::ColourRows(const std::vector<Colour>& colours, QWidget* parent)
    : QWidget(parent)
    , m_column(new QVBoxLayout)
    , m_add(new Button(tr("Another colour"), QStringLiteral("plus"), Button::Kind::Quiet))
    , m_shadeOf((new Label(QString(), Type::Small, &Tokens::ink2))->wrapped())
    , m_picker(new ShadePicker(tr("Shade"))) {
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(kSpace8);
    m_column->setSpacing(kSpace8);
    whole->addLayout(m_column);
    whole->addWidget(m_add, 0, Qt::AlignLeft);
    whole->addWidget(m_shadeOf);
    whole->addWidget(m_picker);
    m_add->setObjectName(QStringLiteral("addColour"));
    for (const Colour& colour : colours)
        addRow(colour);
    if (colours.empty())
        addNewRow();
    turnTo(0);
    connect(m_add, &QAbstractButton::clicked, this, [this] {
        addNewRow().name->setFocus(Qt::TabFocusReason);
        emit changed();
    });
    connect(m_picker, &ShadePicker::changed, this, [this] {
        if (const auto rgb = m_picker->shade()) {
            setShade(m_rows[m_current], *rgb);
            emit changed();
        }
    });
}

ColourRows::Row& ColourRows::addNewRow() {
    return addRow({{}, {}, shadeOfRow(m_rows.size())});
}

ColourRows::Row& ColourRows::addRow(const Colour& colour) {
    Row row{new QWidget,
            new RowSwatch(colour.rgb),
            new Field,
            new Button(QString(), QStringLiteral("shelf-away"), Button::Kind::Quiet),
            new Button(QString(), QStringLiteral("close"), Button::Kind::Quiet),
            colour};
    row.name->setText(words(colour.name));
    row.name->editor()->setPlaceholderText(tr("Name, for example Moss"));
    row.name->editor()->installEventFilter(this);
    auto* line = new QHBoxLayout(row.whole);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(kSpace8);
    line->addWidget(row.swatch);
    line->addWidget(row.name, 1);
    line->addWidget(row.retire);
    line->addWidget(row.remove);
    m_column->addWidget(row.whole);
    row.retire->setVisible(colour.id != ColourId{});
    connect(row.retire, &QAbstractButton::clicked, this, [this, whole = row.whole] {
        Row& at = *std::ranges::find(m_rows, whole, &Row::whole);
        at.colour.isRetired = !at.colour.isRetired;
        showRetired(at);
        emit changed();
    });
    connect(row.name, &Field::edited, this, [this] {
        nameRows();
        showShade();
        emit changed();
    });
    connect(row.remove, &QAbstractButton::clicked, this, [this, whole = row.whole] { removeRow(whole); });
    m_rows.push_back(row);
    showRetired(row);
    row.whole->show(); // at once, so that the keyboard can go there
    return m_rows.back();
}

void ColourRows::removeRow(const QWidget* whole) {
    const auto row = std::ranges::find(m_rows, whole, [](const Row& each) { return each.whole; });
    if (row == m_rows.end() || m_rows.size() == 1)
        return;
    const auto at = static_cast<std::size_t>(row - m_rows.begin());
    QWidget* gone = row->whole;
    row->name->disconnect(this);
    row->name->setObjectName({}); // its name goes to the row after it
    row->name->editor()->setObjectName({});
    m_rows.erase(row);
    nameRows();
    const std::size_t next = std::min(at, m_rows.size() - 1);
    turnTo(next);
    m_rows[next].name->setFocus(Qt::OtherFocusReason);
    gone->hide();
    gone->deleteLater(); // its own button brought us here
    emit changed();
}

// Numbers follow the rows, and the keyboard comes to the row that wants a name.
void ColourRows::nameRows() {
    for (std::size_t at = 0; at < m_rows.size(); ++at) {
        Row& row = m_rows[at];
        row.name->setObjectName(QStringLiteral("colour-%1").arg(at));
        row.name->editor()->setObjectName(QStringLiteral("colour-%1Editor").arg(at));
        row.name->editor()->setAccessibleName(tr("Name of colour %1").arg(at + 1));
        row.remove->setObjectName(QStringLiteral("removeColour-%1").arg(at));
        row.remove->setAccessibleName(tr("Remove colour %1").arg(at + 1));
        row.remove->setToolTip(row.remove->accessibleName());
        row.retire->setObjectName(QStringLiteral("retireColour-%1").arg(at));
        row.retire->setAccessibleName(row.colour.isRetired ? tr("Bring back colour %1").arg(at + 1)
                                                           : tr("Retire colour %1").arg(at + 1));
        row.retire->setToolTip(row.retire->accessibleName());
        row.remove->setVisible(m_rows.size() > 1);
    }
    m_add->setVisible(m_rows.size() < kMostColours);
    setFocusProxy(m_rows[firstUnnamed()].name);
}

// Said in words, next to its name.
void ColourRows::showRetired(const Row& row) {
    row.name->setSuffix(row.colour.isRetired ? tr("retired") : QString());
    nameRows();
}

bool ColourRows::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusIn)
        for (std::size_t at = 0; at < m_rows.size(); ++at)
            if (m_rows[at].name->editor() == watched)
                turnTo(at);
    return QWidget::eventFilter(watched, event);
}

void ColourRows::turnTo(std::size_t row) {
    m_current = row;
    m_picker->setShade(m_rows[row].colour.rgb);
    showShade();
}

void ColourRows::setShade(Row& row, std::uint32_t rgb) {
    row.colour.rgb = rgb;
    static_cast<RowSwatch*>(row.swatch)->setShade(rgb);
}

void ColourRows::showShade() {
    const QString name = m_rows[m_current].name->text().trimmed();
    m_shadeOf->setText(name.isEmpty() ? tr("Shade of colour %1").arg(m_current + 1)
                                      : tr("Shade of %1").arg(name));
}

std::size_t ColourRows::firstUnnamed() const {
    for (std::size_t at = 0; at < m_rows.size(); ++at)
        if (m_rows[at].name->text().trimmed().isEmpty())
            return at;
    return m_rows.size() - 1;
}

std::vector<Colour> ColourRows::colours() const {
    std::vector<Colour> colours;
    for (const Row& row : m_rows)
        if (!row.name->text().trimmed().isEmpty())
            colours.push_back({row.colour.id, plain(row.name->text()), row.colour.rgb, row.colour.isRetired});
    return colours;
}

bool ColourRows::isFilled() const {
    return wrong().isEmpty();
}

QString ColourRows::wrong() const {
    if (colours().empty())
        return tr("Colours: name at least one.");
    if (colours().size() < m_rows.size())
        return tr("Colour %1 has a shade and no name: name it, or remove it.").arg(firstUnnamed() + 1);
    return {};
}

QVariant ColourRows::typed() const {
    QVariantList rows;
    for (const Row& row : m_rows)
        rows.append(QVariant(QVariantList{row.name->text(), row.colour.rgb,
                                          QVariant::fromValue<qlonglong>(row.colour.id.value),
                                          row.colour.isRetired}));
    return rows;
}

void ColourRows::putBack(const QVariant& typed) {
    const QVariantList rows = typed.toList();
    if (rows.isEmpty())
        return;
    while (!m_rows.empty()) {
        delete m_rows.back().whole;
        m_rows.pop_back();
    }
    for (const QVariant& each : rows) {
        const QVariantList row = each.toList();
        Colour colour{ColourId{row.value(2).toLongLong()}, plain(row.value(0).toString()),
                      row.value(1).toUInt(), row.value(3).toBool()};
        addRow(colour);
    }
    turnTo(0);
    emit changed();
}

} // namespace holdfast::app
