"""The editors' protocol as pygls speaks it, but every request gets an answer.

pygls is silent on a request that it cannot read, and on one that comes after the shutdown, so an
editor would wait for ever.  It also keeps the result of each notification, which grows without
end while a user types.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from lsprotocol.types import INITIALIZE
from pygls.exceptions import (
    JsonRpcException,
    JsonRpcInvalidParams,
    JsonRpcInvalidRequest,
    JsonRpcServerNotInitialized,
)
from pygls.protocol import LanguageServerProtocol


class AnsweringProtocol(LanguageServerProtocol):
    """Answers what pygls would leave unanswered; everything else is pygls' own."""

    _introduced = False

    @property
    def was_shut_down(self) -> bool:
        """Whether the editor has announced that it will exit."""
        return bool(self._shutdown)

    def structure_message(self, data: dict[str, Any]) -> Any:
        """Return a message's contents as values of the protocol's types; see pygls.

        Raises:
            JsonRpcException: they cannot be read; a request has been answered with an error.
        """
        is_request = "id" in data and "method" in data
        try:
            message = super().structure_message(data)
        except JsonRpcException:
            if is_request:
                self._refuse(data["id"], JsonRpcInvalidParams())
            raise
        # pygls takes what goes by a notification's name for one, and those get no answer
        if is_request and (not hasattr(message, "id") or message.jsonrpc != self.VERSION):
            wrong = JsonRpcInvalidRequest(f"{data['method']} is no request")
            self._refuse(data["id"], wrong)
            raise wrong
        return message

    def handle_message(self, message: Any) -> None:
        """Handle a message; a request before the first or after the last one gets an error."""
        asked = getattr(message, "method", None) if hasattr(message, "id") else None
        self._introduced = self._introduced or asked == INITIALIZE
        if asked is not None and self.was_shut_down:
            self._refuse(message.id, JsonRpcInvalidRequest("the server was shut down"))
        elif asked is not None and not self._introduced:
            self._refuse(message.id, JsonRpcServerNotInitialized())
        else:
            super().handle_message(message)

    def _refuse(self, request: Any, error: JsonRpcException) -> None:
        self._send_response(request, None, error.to_response_error())

    def _execute_handler(
        self,
        msg_id: Any,
        handler: Any,
        callback: Callable[[Any], Any],
        args: tuple[Any, ...] | None = None,
        kwargs: dict[str, Any] | None = None,
    ) -> None:
        def done(future: Any) -> None:
            # pygls forgets the futures of requests only; those of notifications are forgotten here.
            self._request_futures.pop(msg_id, None)
            callback(future)

        super()._execute_handler(msg_id, handler, done, args, kwargs)
