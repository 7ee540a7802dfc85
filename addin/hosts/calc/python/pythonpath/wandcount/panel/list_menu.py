"""Opens a drop-down list as a menu at its field, where the office would open the list elsewhere.

Drawn with GTK, the office does not know where in its window a panel lies: a list opens at the window's left edge. A
menu it places rightly. The list stays what the keyboard and screen readers are on.
"""

import os

import uno
import unohelper
from com.sun.star.awt import XActionListener, XKeyHandler, XMouseListener

from ..office.context import office_context
from ..office.main_thread import later
from .controls import place

_MAPS = "/proc/self/maps"
_DOWN = uno.getConstantByName("com.sun.star.awt.Key.DOWN")
_ALT = uno.getConstantByName("com.sun.star.awt.KeyModifier.MOD2")
_ONE_OF_SEVERAL = uno.getConstantByName("com.sun.star.awt.MenuItemStyle.CHECKABLE") | uno.getConstantByName(
    "com.sun.star.awt.MenuItemStyle.RADIOCHECK"
)
_BELOW = uno.getConstantByName("com.sun.star.awt.PopupMenuDirection.EXECUTE_DOWN")


def lists_go_astray():
    """True where the office draws with GTK; it tells nobody but by what it has loaded."""
    if not os.path.exists(_MAPS):
        return False
    with open(_MAPS, encoding="utf-8", errors="replace") as maps:
        return any("libvclplug_gtk" in line for line in maps)


class _Heard(unohelper.Base, XActionListener, XKeyHandler, XMouseListener):
    def __init__(self, menu):
        self._menu = menu

    def actionPerformed(self, event):
        later(self._menu.open)

    def keyPressed(self, event):
        wanted = event.KeyCode == _DOWN and event.Modifiers == _ALT and self._menu.has_keyboard()
        if wanted:
            later(self._menu.open)
        return wanted

    def keyReleased(self, event):
        return False

    def mouseEntered(self, event):
        self._menu.cover()

    def mouseExited(self, event):
        if event.Source == self._menu.button:
            self._menu.uncover()

    def mousePressed(self, event):
        pass

    def mouseReleased(self, event):
        pass

    def disposing(self, event):
        pass


class ListMenu:
    """The menu of one list. A button takes the list's place while the mouse is on it: a press must not open the list.

    `button` is made before the list, so that it lies over it; `chosen` is told when the user has chosen.
    """

    def __init__(self, drawing, button, chosen):
        self._drawing = drawing
        self.button = button
        self._chosen = chosen
        self._list = None
        self._heard = _Heard(self)
        self._toolkit = button.getPeer().getToolkit()
        self._covers = True
        self.uncover()
        button.addActionListener(self._heard)
        button.addMouseListener(self._heard)

    def watch(self, control):
        self._list = control
        control.addMouseListener(self._heard)
        self._toolkit.addKeyHandler(self._heard)

    def remove(self):
        self._list = None
        self._toolkit.removeKeyHandler(self._heard)

    def has_keyboard(self):
        return self._list is not None and self._drawing.is_on(self._list)

    def cover(self):
        if self._list is None or not self._list.Model.Enabled:
            return
        self.button.Model.Label = f"{self._list.SelectedItem} ▾"
        at = self._list.getPosSize()
        place(self.button, at.X, at.Y, at.Width, at.Height)
        self.button.setVisible(True)
        self._covers = True

    def uncover(self):
        """Also where the list goes to another place: the mouse may not be on it there."""
        if not self._covers:
            return
        self._covers = False
        self.button.setVisible(False)
        place(self.button, 0, 0, 0, 0)

    def open(self):
        """Shows the choices until the user has chosen one, or none."""
        control = self._list
        if control is None:
            return
        context = office_context()
        menu = context.ServiceManager.createInstanceWithContext("com.sun.star.awt.PopupMenu", context)
        offered = control.Model.StringItemList
        for at, words in enumerate(offered):
            menu.insertItem(at + 1, words, _ONE_OF_SEVERAL, at)
        was = control.getSelectedItemPos()
        if was >= 0:
            menu.checkItem(was + 1, True)
        at = control.getPosSize()
        field = uno.createUnoStruct("com.sun.star.awt.Rectangle", at.X, at.Y, at.Width, at.Height)
        chosen = menu.execute(self._drawing.window.Peer, field, _BELOW) - 1
        # Meanwhile another view may have been drawn.
        if self._list is None:
            return
        self.uncover()
        control.setFocus()
        if chosen >= 0 and chosen != was and control.Model.StringItemList == offered:
            with self._drawing.quietly():
                control.selectItemPos(chosen, True)
            self._chosen()
