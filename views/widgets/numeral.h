// One large number: value, its unit small and muted, and a caption below.
#pragma once

#include "views/theme/theme.h"

#include <QWidget>

namespace rickyard::views {

class Numeral : public QWidget
{
    Q_OBJECT

public:
    explicit Numeral(QWidget *parent = nullptr);
    Numeral(const QString &value, const QString &unit, const QString &caption,
            QWidget *parent = nullptr);

    // An empty value shows the mark of a missing one.
    void setValue(const QString &value, const QString &unit);
    void setCaption(const QString &caption);
    // Colour of the number; a semantic role also draws its shape before the caption.
    void setRole(Role role);
    // NumeralHuge, NumeralLarge (usual) or Display.
    void setTextStyle(TextStyle style);
    QString value() const { return value_; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    void refresh();
    QFont unitFont() const;
    bool showsShape() const;

    QString value_;
    QString unit_;
    QString caption_;
    Role role_ = Role::Ink;
    TextStyle style_ = TextStyle::NumeralLarge;
};

} // namespace rickyard::views
