#include "app/slips/colour_rows.h"

#include "app/desk/formats.h"
#include "app/slips/shade_picker.h"
#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"

#include <QBoxLayout>
#include <QLineEdit>
#include <QPainter>

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

ColourRows::ColourRows(QWidget* parent)
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
    addRow();
    turnTo(0);
    connect(m_add, &QAbstractButton::clicked, this, [this] {
        addRow();
        m_rows.back().name->setFocus(Qt::TabFocusReason);
    });
    connect(m_picker, &ShadePicker::changed, this, [this] {
        if (const auto rgb = m_picker->shade()) {
            Row& row = m_rows[m_current];
            row.rgb = *rgb;
            static_cast<RowSwatch*>(row.swatch)->setShade(*rgb);
            emit changed();
        }
    });
}

void ColourRows::addRow() {
    const std::size_t number = m_rows.size();
    Row row{new RowSwatch(shadeOfRow(number)), new Field, shadeOfRow(number)};
    row.name->setObjectName(QStringLiteral("colour-%1").arg(number));
    row.name->editor()->setObjectName(QStringLiteral("colour-%1Editor").arg(number));
    row.name->editor()->setAccessibleName(tr("Name of colour %1").arg(number + 1));
    row.name->editor()->setPlaceholderText(tr("Name, as Moss"));
    row.name->editor()->installEventFilter(this);
    auto* line = new QHBoxLayout;
    line->setSpacing(kSpace8);
    line->addWidget(row.swatch);
    line->addWidget(row.name, 1);
    m_column->addLayout(line);
    row.swatch->show();
    row.name->show(); // at once, so that the keyboard can go there
    connect(row.name, &Field::edited, this, [this] {
        showShade();
        emit changed();
    });
    if (number > 0)
        setTabOrder(m_rows.back().name, row.name);
    setTabOrder(row.name, m_add);
    m_rows.push_back(row);
    m_add->setVisible(m_rows.size() < kMostColours);
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
    m_picker->setShade(m_rows[row].rgb);
    showShade();
}

void ColourRows::showShade() {
    const QString name = m_rows[m_current].name->text().trimmed();
    m_shadeOf->setText(name.isEmpty() ? tr("Shade of colour %1").arg(m_current + 1)
                                      : tr("Shade of %1").arg(name));
}

std::vector<Colour> ColourRows::colours() const {
    std::vector<Colour> colours;
    for (const Row& row : m_rows)
        if (!row.name->text().trimmed().isEmpty())
            colours.push_back({{}, plain(row.name->text()), row.rgb});
    return colours;
}

} // namespace holdfast::app
