// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/style.h"

#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QAbstractItemView>
#include <QCalendarWidget>
#include <QComboBox>
#include <QHeaderView>
#include <QIcon>
#include <QKeySequence>
#include <QPainter>
#include <QPlainTextEdit>
#include <QStyleFactory>
#include <QStyleOption>
#include <QTableView>
#include <QTextEdit>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kScrollHandleWidth = 6;
constexpr int kMenuSignRoom = 32;

bool isEnabled(const QStyleOption* option) {
    return option->state.testFlag(QStyle::State_Enabled);
}

void paintFieldBox(QPainter& painter, const QRectF& box, bool canEdit) {
    const Tokens& dyes = tokens();
    paintBox(painter, box, kButtonRadius, canEdit ? dyes.card : dyes.sunk, dyes.edge, 1.2, !canEdit);
}

// The chevron, pointing down, up, left or right.
void paintChevron(QPainter& painter, const QRectF& box, const QColor& ink, bool isUp = false) {
    painter.save();
    if (isUp) {
        painter.translate(box.center());
        painter.rotate(180);
        painter.translate(-box.center());
    }
    paintIcon(painter, box, QStringLiteral("chevron-down"), ink);
    painter.restore();
}

QRectF centredIn(const QRect& room, qreal size) {
    const QPointF centre = QRectF(room).center();
    return {centre.x() - size / 2, centre.y() - size / 2, size, size};
}

void paintScrollBar(QPainter& painter, const QStyleOptionSlider& bar, const QRect& handle) {
    const Tokens& dyes = tokens();
    if (bar.maximum <= bar.minimum) {
        return;
    }
    const bool isActive =
        bar.state.testFlag(QStyle::State_MouseOver) || bar.state.testFlag(QStyle::State_Sunken);
    QRectF drawn(handle);
    const int across = bar.orientation == Qt::Vertical ? bar.rect.width() : bar.rect.height();
    const qreal off = (across - kScrollHandleWidth) / 2.0;
    if (bar.orientation == Qt::Vertical) {
        drawn = QRectF(bar.rect.left() + off, handle.top() + 2, kScrollHandleWidth, handle.height() - 4);
    } else {
        drawn = QRectF(handle.left() + 2, bar.rect.top() + off, handle.width() - 4, kScrollHandleWidth);
    }
    paintBox(painter, drawn, kScrollHandleWidth / 2.0, isActive ? dyes.edge : dyes.thread, {});
}

void paintCheckBox(QPainter& painter, const QStyleOption& option) {
    const Tokens& dyes = tokens();
    const bool can = isEnabled(&option);
    const QRectF box(option.rect);
    paintBox(painter, box, 6, dyes.card, dyes.edge, 1.2, !can);
    const QColor ink = can ? dyes.indigo : dyes.ink3;
    if (option.state.testFlag(QStyle::State_On)) {
        paintIcon(painter, centredIn(option.rect, 18), QStringLiteral("tick"), ink);
    } else if (option.state.testFlag(QStyle::State_NoChange)) {
        paintIcon(painter, centredIn(option.rect, 18), QStringLiteral("minus"), ink);
    }
}

// The two keys of a number that is stepped, − and +, each at its end.
void paintStepKeys(QPainter& painter, const QStyleOptionSpinBox& spin, const QRect& less, const QRect& more) {
    const Tokens& dyes = tokens();
    const auto key = [&](const QRectF& box, const QString& icon, QStyle::SubControl part,
                         QAbstractSpinBox::StepEnabledFlag step) {
        const bool can = isEnabled(&spin) && spin.stepEnabled.testFlag(step);
        const bool isActive = can && spin.activeSubControls.testFlag(part);
        const QColor& active = spin.state.testFlag(QStyle::State_Sunken) ? dyes.woad : dyes.sunk;
        paintBox(painter, box, kButtonRadius, isActive ? active : dyes.card, dyes.edge, 1.2, !can);
        paintIcon(painter, box.adjusted(10, 10, -10, -10), icon, can ? dyes.ink : dyes.ink3);
    };
    key(less, QStringLiteral("minus"), QStyle::SC_SpinBoxDown, QAbstractSpinBox::StepDownEnabled);
    key(more, QStringLiteral("plus"), QStyle::SC_SpinBoxUp, QAbstractSpinBox::StepUpEnabled);
}

void paintRadio(QPainter& painter, const QStyleOption& option) {
    const Tokens& dyes = tokens();
    const QRectF box = centredIn(option.rect, std::min(option.rect.width(), option.rect.height()));
    paintBox(painter, box, box.height() / 2, dyes.card, dyes.edge, 1.2, !isEnabled(&option));
    if (option.state.testFlag(QStyle::State_On)) {
        const qreal in = box.width() * 0.28;
        paintBox(painter, box.adjusted(in, in, -in, -in), box.height() / 2,
                 isEnabled(&option) ? dyes.indigo : dyes.ink3, {});
    }
}

// A button of Qt's own, as in a file dialog: plain, and indigo when it is the default one.
void paintPlainButton(QPainter& painter, const QStyleOptionButton& button) {
    const Tokens& dyes = tokens();
    const bool isDefault = button.features.testFlag(QStyleOptionButton::DefaultButton);
    const bool isActive =
        button.state.testFlag(QStyle::State_MouseOver) || button.state.testFlag(QStyle::State_Sunken);
    const QRectF box(button.rect);
    if (!isEnabled(&button)) {
        paintBox(painter, box, kButtonRadius, dyes.sunk, dyes.edge, 1.2, true);
    } else if (isDefault) {
        paintBox(painter, box, kButtonRadius, isActive ? dyes.indigoDeep : dyes.indigo, {});
    } else {
        paintBox(painter, box, kButtonRadius, isActive ? dyes.sunk : dyes.card, dyes.edge, 1.2);
    }
}

void paintMenuItem(QPainter& painter, const QStyleOptionMenuItem& item) {
    const Tokens& dyes = tokens();
    if (item.menuItemType == QStyleOptionMenuItem::Separator) {
        painter.fillRect(
            QRectF(item.rect.left() + kSpace8, item.rect.center().y(), item.rect.width() - 2 * kSpace8, 1),
            dyes.thread);
        return;
    }
    const QRectF row = QRectF(item.rect).adjusted(2, 0, -2, 0);
    if (item.state.testFlag(QStyle::State_Selected)) {
        paintBox(painter, row, kKeyRadius, dyes.woad, {});
    }
    const QColor ink = isEnabled(&item) ? dyes.ink : dyes.ink3;
    QRectF words = row.adjusted(kMenuSignRoom, 0, -kSpace12, 0);
    const QRectF sign(row.left() + kSpace8, row.center().y() - kSmallIcon / 2.0, kSmallIcon, kSmallIcon);
    if (item.checked) {
        paintIcon(painter, sign, QStringLiteral("tick"), dyes.indigo);
    } else if (!item.icon.isNull()) {
        item.icon.paint(&painter, sign.toRect());
    }
    // "&Undo\tCtrl+Z": the key is at the right end; ampersands only mark letters.
    const QStringList parts = item.text.split(u'\t');
    QString plain = parts.first();
    plain.remove(u'&');
    paintLine(painter, words, plain, Type::Body, ink);
    if (item.menuItemType == QStyleOptionMenuItem::SubMenu) {
        paintIcon(painter, QRectF(words.right() - kSmallIcon, sign.top(), kSmallIcon, kSmallIcon),
                  QStringLiteral("chevron"), ink);
    } else if (parts.size() > 1) {
        paintLine(painter, words, keyCapText(QKeySequence(parts[1])), Type::Small, dyes.ink2, Qt::AlignRight);
    }
}

} // namespace

bool isTextEditor(const QWidget* widget) {
    return qobject_cast<const QPlainTextEdit*>(widget) != nullptr ||
           qobject_cast<const QTextEdit*>(widget) != nullptr;
}

WorkshopStyle::WorkshopStyle()
    : QProxyStyle(QStyleFactory::create(QStringLiteral("Fusion"))) {}

void WorkshopStyle::polish(QWidget* widget) {
    QProxyStyle::polish(widget);
    if (auto* header = qobject_cast<QHeaderView*>(widget)) {
        header->setFont(fontOf(Type::SmallStrong));
        header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        header->setHighlightSections(false);
        header->setFrameShape(QFrame::NoFrame);
    } else if (widget->inherits("QComboBoxPrivateContainer")) {
        static_cast<QFrame*>(widget)->setFrameShape(QFrame::StyledPanel);
    } else if (auto* calendar = qobject_cast<QCalendarWidget*>(widget)) {
        calendar->setVerticalHeaderFormat(QCalendarWidget::NoVerticalHeader);
        for (const Qt::DayOfWeek day : {Qt::Saturday, Qt::Sunday}) {
            calendar->setWeekdayTextFormat(day, {}); // a fair is often on one
        }
    } else if (auto* view = qobject_cast<QAbstractItemView*>(widget)) {
        view->setFrameShape(QFrame::NoFrame);
        view->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
        view->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    } else if (auto* plainText = qobject_cast<QPlainTextEdit*>(widget)) {
        plainText->viewport()->setAutoFillBackground(false);
    } else if (auto* richText = qobject_cast<QTextEdit*>(widget)) {
        richText->viewport()->setAutoFillBackground(false);
    } else if (auto* combo = qobject_cast<QComboBox*>(widget)) {
        combo->setFont(fontOf(Type::BodyStrong));
        combo->setAttribute(Qt::WA_Hover);
    }
}

QIcon WorkshopStyle::standardIcon(StandardPixmap standard, const QStyleOption* option,
                                  const QWidget* widget) const {
    const Tokens& dyes = tokens();
    const auto ours = [widget](const QString& name, const QColor& ink, int size) {
        return QIcon(iconPixmap(name, ink, size, widget != nullptr ? widget->devicePixelRatioF() : 1.0));
    };
    constexpr int kLarge = 32;
    switch (standard) {
    case SP_MessageBoxWarning:
        return ours(QStringLiteral("caution"), dyes.weld, kLarge);
    case SP_MessageBoxCritical:
        return ours(QStringLiteral("hold"), dyes.madder, kLarge);
    case SP_MessageBoxInformation:
    case SP_MessageBoxQuestion:
        return ours(QStringLiteral("tag"), dyes.indigo, kLarge);
    case SP_ArrowRight:
    case SP_ArrowForward:
        return ours(QStringLiteral("chevron"), dyes.ink, kIcon);
    case SP_ArrowLeft:
    case SP_ArrowBack: {
        const QPixmap right = ours(QStringLiteral("chevron"), dyes.ink, kIcon).pixmap(kIcon);
        return QIcon(right.transformed(QTransform::fromScale(-1, 1)));
    }
    case SP_LineEditClearButton:
        return ours(QStringLiteral("close"), dyes.ink2, kSmallIcon);
    default:
        return QProxyStyle::standardIcon(standard, option, widget);
    }
}

void WorkshopStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                                  const QWidget* widget) const {
    const Tokens& dyes = tokens();
    switch (element) {
    case PE_FrameFocusRect: // the ring is outside, see focus_ring.h
        return;
    case PE_PanelLineEdit: {
        const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
        if (frame != nullptr && frame->lineWidth > 0) {
            paintFieldBox(*painter, option->rect,
                          isEnabled(option) && !option->state.testFlag(State_ReadOnly));
        }
        return;
    }
    case PE_FrameLineEdit:
        return;
    case PE_Frame:
        if (isTextEditor(widget)) {
            paintFieldBox(*painter, option->rect, isEnabled(option));
        } else {
            paintOutline(*painter, option->rect, 0, dyes.edge);
        }
        return;
    case PE_IndicatorCheckBox:
    case PE_IndicatorItemViewItemCheck:
        paintCheckBox(*painter, *option);
        return;
    case PE_IndicatorRadioButton:
        paintRadio(*painter, *option);
        return;
    case PE_PanelButtonCommand:
        if (const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option)) {
            paintPlainButton(*painter, *button);
            return;
        }
        break;
    case PE_PanelTipLabel:
        painter->fillRect(option->rect, dyes.ink);
        return;
    case PE_PanelMenu:
        paintBox(*painter, option->rect, 0, dyes.card, dyes.edge, 1);
        return;
    case PE_FrameMenu:
        return;
    case PE_IndicatorHeaderArrow:
        if (const auto* header = qstyleoption_cast<const QStyleOptionHeader*>(option)) {
            paintChevron(*painter, centredIn(option->rect, kSmallIcon), dyes.ink2,
                         header->sortIndicator == QStyleOptionHeader::SortUp);
            return;
        }
        break;
    default:
        break;
    }
    QProxyStyle::drawPrimitive(element, option, painter, widget);
}

void WorkshopStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                                const QWidget* widget) const {
    const Tokens& dyes = tokens();
    switch (element) {
    case CE_HeaderSection:
    case CE_HeaderEmptyArea:
        painter->fillRect(option->rect, dyes.sunk);
        painter->fillRect(QRect(option->rect.left(), option->rect.bottom(), option->rect.width(), 1),
                          dyes.thread);
        return;
    case CE_ComboBoxLabel:
        if (const auto* combo = qstyleoption_cast<const QStyleOptionComboBox*>(option)) {
            QRect room = subControlRect(CC_ComboBox, combo, SC_ComboBoxEditField, widget);
            if (!combo->currentIcon.isNull()) {
                const int size = kIcon;
                const QRect at(room.left(), room.center().y() - size / 2, size, size);
                combo->currentIcon.paint(painter, at);
                room.setLeft(at.right() + 1 + kSpace8);
            }
            if (!combo->editable) {
                paintLine(*painter, room, combo->currentText, Type::BodyStrong,
                          isEnabled(option) ? dyes.ink : dyes.ink3);
            }
            return;
        }
        break;
    case CE_PushButtonLabel:
        if (const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option)) {
            QStyleOptionButton dressed(*button);
            const bool isDefault =
                button->features.testFlag(QStyleOptionButton::DefaultButton) && isEnabled(option);
            dressed.palette.setColor(QPalette::ButtonText, isDefault           ? dyes.onIndigo
                                                           : isEnabled(option) ? dyes.ink
                                                                               : dyes.ink3);
            painter->setFont(fontOf(Type::BodyStrong));
            QProxyStyle::drawControl(element, &dressed, painter, widget);
            return;
        }
        break;
    case CE_MenuItem:
        if (const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option)) {
            paintMenuItem(*painter, *item);
            return;
        }
        break;
    default:
        break;
    }
    QProxyStyle::drawControl(element, option, painter, widget);
}

void WorkshopStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                       QPainter* painter, const QWidget* widget) const {
    const Tokens& dyes = tokens();
    const QColor ink = isEnabled(option) ? dyes.ink : dyes.ink3;
    switch (control) {
    case CC_ScrollBar:
        if (const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option)) {
            paintScrollBar(*painter, *bar, subControlRect(CC_ScrollBar, option, SC_ScrollBarSlider, widget));
            return;
        }
        break;
    case CC_ComboBox:
        if (const auto* combo = qstyleoption_cast<const QStyleOptionComboBox*>(option)) {
            if (combo->frame) {
                const bool isActive =
                    combo->state.testFlag(State_MouseOver) && isEnabled(option) && !combo->editable;
                paintFieldBox(*painter, combo->rect, isEnabled(option));
                if (isActive) {
                    paintBox(*painter, combo->rect, kButtonRadius, dyes.sunk, dyes.edge, 1.2);
                }
            }
            paintChevron(*painter,
                         centredIn(subControlRect(CC_ComboBox, option, SC_ComboBoxArrow, widget), kIcon),
                         ink);
            return;
        }
        break;
    case CC_SpinBox:
        if (const auto* spin = qstyleoption_cast<const QStyleOptionSpinBox*>(option)) {
            if (spin->buttonSymbols == QAbstractSpinBox::PlusMinus) {
                paintStepKeys(*painter, *spin, subControlRect(CC_SpinBox, option, SC_SpinBoxDown, widget),
                              subControlRect(CC_SpinBox, option, SC_SpinBoxUp, widget));
                return;
            }
            if (spin->frame) {
                paintFieldBox(*painter, spin->rect, isEnabled(option));
            }
            if (spin->buttonSymbols != QAbstractSpinBox::NoButtons) {
                const auto inkOf = [&](QAbstractSpinBox::StepEnabledFlag step) {
                    return spin->stepEnabled.testFlag(step) ? ink : dyes.thread;
                };
                paintChevron(*painter,
                             centredIn(subControlRect(CC_SpinBox, option, SC_SpinBoxUp, widget), kSmallIcon),
                             inkOf(QAbstractSpinBox::StepUpEnabled), true);
                paintChevron(
                    *painter,
                    centredIn(subControlRect(CC_SpinBox, option, SC_SpinBoxDown, widget), kSmallIcon),
                    inkOf(QAbstractSpinBox::StepDownEnabled));
            }
            return;
        }
        break;
    default:
        break;
    }
    QProxyStyle::drawComplexControl(control, option, painter, widget);
}

} // namespace holdfast::app
