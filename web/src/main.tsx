import { render } from 'preact'

render(<p>Swardwright</p>, document.getElementById('app') ?? document.body)
