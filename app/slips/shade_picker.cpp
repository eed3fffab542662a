// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/shade_picker.h"

#include "app/desk/formats.h"
#include "app/theme/drawings.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/widgets/field.h"

#include <QBoxLayout>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QRegularExpression>

#include <array>

namespace holdfast::app {

namespace {

constexpr int kCellHeight = 24;
constexpr double kCellGap = 2;

struct Depth {
    double saturation;
    double lightness;
};

// Dyed cloth and film are muted more often than not; the last row of hues is the bright one.
constexpr std::array<Depth, ShadeCard::kRows - 1> kDepths{
    {{0.35, 0.82}, {0.32, 0.63}, {0.36, 0.45}, {0.42, 0.27}, {0.80, 0.48}}};

std::optional<std::uint32_t> rgbOf(const QString& code) {
    static const QRegularExpression sixDigits(QStringLiteral("^#?([0-9a-fA-F]{6})$"));
    const auto match = sixDigits.match(code.trimmed());
    if (!match.hasMatch())
        return std::nullopt;
    return match.captured(1).toUInt(nullptr, 16);
}

QString codeOfShade(std::uint32_t rgb) {
    return QStringLiteral("%1").arg(rgb, 6, 16, QLatin1Char('0'));
}

} // namespace

ShadeCard::ShadeCard(const QString& accessibleName, QWidget* parent)
    : QWidget(parent) {
    setAccessibleName(accessibleName);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    giveFocusRing(this);
}

QColor ShadeCard::shadeAt(int column, int row) {
    if (row == kRows - 1)
        return QColor::fromHslF(0.F, 0.F, static_cast<float>(0.98 - 0.94 * column / (kColumns - 1)));
    const Depth depth = kDepths[static_cast<std::size_t>(row)];
    return QColor::fromHslF(static_cast<float>(column) / kColumns, static_cast<float>(depth.saturation),
                            static_cast<float>(depth.lightness));
}

void ShadeCard::setShade(const QColor& shade) {
    m_isOnCard = false;
    for (int row = 0; row < kRows && !m_isOnCard; ++row) {
        for (int column = 0; column < kColumns && !m_isOnCard; ++column) {
            if (shadeAt(column, row).rgb() == shade.rgb()) {
                m_isOnCard = true;
                m_column = column;
                m_row = row;
            }
        }
    }
    update();
}

QSize ShadeCard::sizeHint() const {
    return {280, kRows * kCellHeight};
}

QSize ShadeCard::minimumSizeHint() const {
    return {kColumns * kSmallIcon, kRows * kCellHeight};
}

QRectF ShadeCard::cell(int column, int row) const {
    const double wide = static_cast<double>(width()) / kColumns;
    return QRectF(column * wide, row * kCellHeight, wide, kCellHeight)
        .adjusted(kCellGap, kCellGap, -kCellGap, -kCellGap);
}

void ShadeCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    for (int row = 0; row < kRows; ++row)
        for (int column = 0; column < kColumns; ++column)
            paintSwatch(painter, cell(column, row), shadeAt(column, row));
    if (m_isOnCard) {
        const QRectF chosen = cell(m_column, m_row).adjusted(-1, -1, 1, 1);
        paintBox(painter, chosen, 5, {}, tokens().card, 4);
        paintBox(painter, chosen.adjusted(-1, -1, 1, 1), 6, {}, tokens().ink, 2);
    }
}

void ShadeCard::pick(int column, int row) {
    m_column = std::clamp(column, 0, kColumns - 1);
    m_row = std::clamp(row, 0, kRows - 1);
    m_isOnCard = true;
    update();
    emit picked(shadeAt(m_column, m_row));
}

void ShadeCard::mousePressEvent(QMouseEvent* event) {
    pick(static_cast<int>(event->position().x() * kColumns / std::max(1, width())),
         static_cast<int>(event->position().y() / kCellHeight));
}

void ShadeCard::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Left:
        pick(m_column - 1, m_row);
        return;
    case Qt::Key_Right:
        pick(m_column + 1, m_row);
        return;
    case Qt::Key_Up:
        pick(m_column, m_row - 1);
        return;
    case Qt::Key_Down:
        pick(m_column, m_row + 1);
        return;
    case Qt::Key_Space:
        pick(m_column, m_row);
        return;
    default:
        event->ignore();
    }
}

ShadePicker::ShadePicker(const QString& accessibleName, QWidget* parent)
    : QWidget(parent)
    , m_card(new ShadeCard(accessibleName))
    , m_code(new Field(tr("Code"))) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kSpace8);
    column->addWidget(m_card);
    column->addWidget(m_code);
    m_card->setObjectName(QStringLiteral("shadeCard"));
    m_code->setObjectName(QStringLiteral("shadeCode"));
    m_code->setPlaceholder(tr("six digits, e.g. 66754c"));
    connect(m_card, &ShadeCard::picked, this, [this](const QColor& shade) {
        m_code->setText(codeOfShade(shade.rgb() & 0xffffffU));
        m_code->setError({});
        emit changed();
    });
    connect(m_code, &Field::edited, this, [this](const QString& code) {
        m_code->setError({});
        if (const auto rgb = rgbOf(code))
            m_card->setShade(colourOf(*rgb));
        emit changed();
    });
    setShade(ShadeCard::shadeAt(0, 0).rgb() & 0xffffffU);
}

void ShadePicker::setShade(std::uint32_t rgb) {
    m_code->setText(codeOfShade(rgb & 0xffffffU));
    m_card->setShade(colourOf(rgb));
}

std::optional<std::uint32_t> ShadePicker::shade() const {
    return rgbOf(m_code->text());
}

} // namespace holdfast::app
