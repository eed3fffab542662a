// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shade of a cloth or a film: picked from a card of shades by pointer or arrow keys, or typed as its code
// (six digits of red, green and blue).

#include <QColor>
#include <QWidget>

#include <cstdint>
#include <optional>

namespace holdfast::app {

class Field;

// The card: hues across, from pale to deep down, a row of greys last.
class ShadeCard : public QWidget {
    Q_OBJECT

public:
    explicit ShadeCard(const QString& accessibleName, QWidget* parent = nullptr);

    static constexpr int kColumns = 12;
    static constexpr int kRows = 6;
    static QColor shadeAt(int column, int row);

    void setShade(const QColor& shade); // marks it where it is on the card; emits nothing

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void picked(const QColor& shade);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QRectF cell(int column, int row) const;
    void pick(int column, int row);

    int m_column = 0;
    int m_row = 0;
    bool m_isOnCard = true; // the shade is one of the card's
};

class ShadePicker : public QWidget {
    Q_OBJECT

public:
    explicit ShadePicker(const QString& accessibleName, QWidget* parent = nullptr);

    void setShade(std::uint32_t rgb);
    std::optional<std::uint32_t> shade() const; // none: the code typed is none
    Field* code() const { return m_code; }

signals:
    void changed();

private:
    ShadeCard* m_card = nullptr;
    Field* m_code = nullptr;
};

} // namespace holdfast::app
