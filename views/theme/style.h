// How every standard widget is drawn: a proxy over Fusion that asks the theme for each colour,
// length and font. Drawn rather than described in a style sheet, so that a widget in a night scope,
// a property set later and a text scale of 200 % need nothing but a repaint.
//
// Widget properties it reads (set them with the helpers below):
//   role = "primary" | "quiet" | "danger" on push and tool buttons
//   invalid = true on editors whose content is refused
#pragma once

#include "views/theme/theme.h"

#include <QProxyStyle>

class QAbstractButton;

namespace rickyard::views {

enum class ButtonKind { Plain, Primary, Quiet, Danger };

// Sets the kind of a button and repaints it.
void setButtonKind(QAbstractButton *button, ButtonKind kind);
// Marks an editor as refused or accepted and repaints it.
void setInvalid(QWidget *editor, bool invalid);
bool isInvalid(const QWidget *editor);

class RickyardStyle : public QProxyStyle
{
    Q_OBJECT

public:
    RickyardStyle();

    int pixelMetric(PixelMetric metric, const QStyleOption *option = nullptr,
                    const QWidget *widget = nullptr) const override;
    int styleHint(StyleHint hint, const QStyleOption *option = nullptr,
                  const QWidget *widget = nullptr,
                  QStyleHintReturn *returned = nullptr) const override;
    QSize sizeFromContents(ContentsType type, const QStyleOption *option, const QSize &size,
                           const QWidget *widget) const override;
    QRect subElementRect(SubElement element, const QStyleOption *option,
                         const QWidget *widget) const override;
    QRect subControlRect(ComplexControl control, const QStyleOptionComplex *option, SubControl part,
                         const QWidget *widget) const override;
    void drawPrimitive(PrimitiveElement element, const QStyleOption *option, QPainter *painter,
                       const QWidget *widget) const override;
    void drawControl(ControlElement element, const QStyleOption *option, QPainter *painter,
                     const QWidget *widget) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex *option,
                            QPainter *painter, const QWidget *widget) const override;
    QIcon standardIcon(StandardPixmap which, const QStyleOption *option,
                       const QWidget *widget) const override;
    using QProxyStyle::polish;
    void polish(QWidget *widget) override;

private:
    void drawItemRow(const QStyleOption *option, QPainter *painter, const QWidget *widget) const;
};

} // namespace rickyard::views
